package cistern.bench;

import cistern.gel.image.Picture;

/**
 * A gel of 1500 by 1000 pixels from a formula, so that the script beside the benchmark measures the
 * same picture: twelve lanes with a hump and eight bands each, dark on light, with grain.
 */
final class InventedGel {

  static final int WIDTH = 1500;
  static final int HEIGHT = 1000;
  private static final int LANES = 12;
  private static final int BANDS = 8;
  private static final double PITCH = 120;
  private static final double HALF = 40;

  private InventedGel() {}

  /** The picture, 16 bits. */
  static Picture picture() {
    char[] samples = new char[WIDTH * HEIGHT];
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        double light = 0.9 * Math.pow(10, -density(x, y)) + 0.02 * grain(x, y);
        samples[y * WIDTH + x] = (char) Math.round(Picture.WHITE * Math.clamp(light, 0, 1));
      }
    }
    return Picture.of(WIDTH, HEIGHT, samples);
  }

  private static double density(int x, int y) {
    int lane = Math.clamp((int) ((x - 30) / PITCH), 0, LANES - 1);
    double across = Math.abs(x - (90 + PITCH * lane)) - HALF;
    double edge = 1 / (1 + Math.exp(across));
    double hump = 0.25 * Math.exp(-0.5 * Math.pow((y - 500) / 120.0, 2));
    double bands = 0;
    for (int b = 0; b < BANDS; b++) {
      double t = (y - (150 + 90 * b + 7 * (lane % 5))) / 3.5;
      bands += 0.3 * Math.exp(-0.5 * t * t);
    }
    return 0.02 + edge * (0.05 + hump + bands);
  }

  /** Even in −½…½. */
  private static double grain(int x, int y) {
    double v = Math.sin(x * 12.9898 + y * 78.233) * 43758.5453;
    return v - Math.floor(v) - 0.5;
  }
}
