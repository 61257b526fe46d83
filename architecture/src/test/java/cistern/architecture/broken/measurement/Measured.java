package cistern.architecture.broken.measurement;

/** The other half of the circle. */
public record Measured(double value) {}
