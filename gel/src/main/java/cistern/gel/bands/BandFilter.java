package cistern.gel.bands;

/**
 * A zero-mean filter for bands: the negative second derivative of a Gaussian. Its answer to a flat
 * or slanting ground is 0; its answer to a Gaussian band of the gel's own width and height 1 is 1
 * at the band's middle.
 *
 * <p>scale: σ of the Gaussian, pixels
 *
 * <p>sigma: σ of the gel's bands, pixels
 */
final class BandFilter {
  private final double scale;
  private final double sigma;
  private final float[] kernel;

  BandFilter(double scale, double sigma, float[] kernel) {
    this.scale = scale;
    this.sigma = sigma;
    this.kernel = kernel;
  }

  double scale() {
    return scale;
  }

  double sigma() {
    return sigma;
  }

  float[] kernel() {
    return kernel;
  }

  static BandFilter of(double scale, double sigma) {
    int reach = (int) Math.ceil(4 * scale);
    double[] k = new double[2 * reach + 1];
    double sum = 0;
    for (int i = -reach; i <= reach; i++) {
      double t = i / scale;
      k[i + reach] = (1 - t * t) * Math.exp(-0.5 * t * t);
      sum += k[i + reach];
    }
    double answer = 0;
    for (int i = -reach; i <= reach; i++) {
      k[i + reach] -= sum / k.length;
      answer += k[i + reach] * Math.exp(-0.5 * i * i / (sigma * sigma));
    }
    float[] kernel = new float[k.length];
    for (int i = 0; i < k.length; i++) {
      kernel[i] = (float) (k[i] / answer);
    }
    return new BandFilter(scale, sigma, kernel);
  }

  /** The filter's answer along a profile, whose ends are continued by their last value. */
  float[] apply(float[] profile) {
    int reach = kernel.length / 2;
    int n = profile.length;
    float[] padded = new float[n + 2 * reach];
    System.arraycopy(profile, 0, padded, reach, n);
    for (int i = 0; i < reach; i++) {
      padded[i] = profile[0];
      padded[n + reach + i] = profile[n - 1];
    }
    float[] answer = new float[n];
    for (int y = 0; y < n; y++) {
      float sum = 0;
      for (int k = 0; k < kernel.length; k++) {
        sum += kernel[k] * padded[y + k];
      }
      answer[y] = sum;
    }
    return answer;
  }

  /**
   * The answer to a Gaussian band of height 1 at a distance from its middle.
   *
   * @param distance pixels
   * @param widening the band's σ over the gel's
   */
  double answer(double distance, double widening) {
    double s = widening * sigma;
    double spread = s * s + scale * scale;
    double own = sigma * sigma + scale * scale;
    double t = distance * distance / spread;
    double top = s / (spread * Math.sqrt(spread)) / (sigma / (own * Math.sqrt(own)));
    return top * (1 - t) * Math.exp(-0.5 * t);
  }
}
