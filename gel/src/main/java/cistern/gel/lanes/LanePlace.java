package cistern.gel.lanes;

/**
 * Where a lane lies.
 *
 * @param xCentre column of its middle at mid-height, pixels
 * @param width pixels
 * @param slope columns per row along which it runs
 */
public record LanePlace(double xCentre, double width, double slope) {}
