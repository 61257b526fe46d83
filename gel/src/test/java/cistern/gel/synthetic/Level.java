package cistern.gel.synthetic;

/**
 * How hard an invented gel is to read. The figures are project rules of the generator: optical
 * densities, pixels at 1500×1000, degrees, and shares of gels.
 */
public enum Level {
  EASY,
  MEDIUM,
  HARD;

  Bands bands() {
    return switch (this) {
      case EASY -> new Bands(0.45, 0.35, 0.15, 2.6, 4.4, 4.5);
      case MEDIUM -> new Bands(0.34, 0.45, 0.08, 2.2, 4.4, 3.6);
      case HARD -> new Bands(0.25, 0.55, 0.045, 1.7, 4.4, 3.0);
    };
  }

  Geometry geometry() {
    return switch (this) {
      case EASY -> new Geometry(5, 1.0, 0.3, 0, 0.1, 3);
      case MEDIUM -> new Geometry(15, 2.5, 1.5, 0.008, 0.35, 6);
      case HARD -> new Geometry(30, 4, 4.5, 0.02, 0.55, 9);
    };
  }

  Sensor sensor() {
    return switch (this) {
      case EASY -> new Sensor(0.003, 0.008, 0.004, 92, 0.3);
      case MEDIUM -> new Sensor(0.010, 0.030, 0.012, 70, 0.5);
      case HARD -> new Sensor(0.020, 0.060, 0.025, 38, 0.7);
    };
  }

  Faults faults() {
    return switch (this) {
      case EASY -> new Faults(0.15, 0.12);
      case MEDIUM -> new Faults(0.35, 0.22);
      case HARD -> new Faults(0.6, 0.35);
    };
  }

  /** Keeps the seeds of the levels apart. */
  int salt() {
    return switch (this) {
      case EASY -> 0;
      case MEDIUM -> 1;
      case HARD -> 2;
    };
  }

  /** Median, log spread and least height of a band in OD; its σ in pixels; nearest miss in σ. */
  record Bands(
      double median, double spread, double least, double sigmaMin, double sigmaMax, double miss) {}

  /**
   * Smile and wave in pixels, rotation in degrees, perspective, share with surround, lane shift.
   */
  record Geometry(
      double smile,
      double wave,
      double rotation,
      double perspective,
      double surround,
      double shift) {}

  /** Noise range and grain in intensity, least JPEG quality in per cent, share of JPEG pictures. */
  record Sensor(double noiseMin, double noiseMax, double grain, int jpegMin, double jpegShare) {}

  /** Chance of each fault on a gel, and log spread of the load of a lane. */
  record Faults(double share, double load) {}
}
