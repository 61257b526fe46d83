package cistern.architecture.broken.panel;

import cistern.architecture.broken.measurement.Measured;

/** An arrow that is drawn. */
public record Panel(Measured value) {}
