package cistern.gel.bands;

/**
 * A Gaussian fitted to a lane's filter answers.
 *
 * @param y middle, rows of the trace
 * @param height OD
 * @param widening its σ over the gel's
 */
record Peak(double y, double height, double widening) {}
