package cistern.gel.image;

/**
 * Relative optical density of a picture, row by row: −log10 of the sample over white, so that more
 * stain is more density for either polarity. Without a calibrated scanner only ratios and
 * differences of it mean something.
 */
public final class Density {
  private final int width;
  private final int height;
  private final float[] od;

  private Density(int width, int height, float[] od) {
    this.width = width;
    this.height = height;
    this.od = od;
  }

  /**
   * The density of a picture.
   *
   * @param darkest share of white below which samples count as equally dark, above 0
   */
  public static Density of(Picture picture, Polarity polarity, double darkest) {
    float[] table = toTable(polarity, darkest);
    int w = picture.width();
    int h = picture.height();
    float[] od = new float[w * h];
    for (int y = 0, i = 0; y < h; y++) {
      for (int x = 0; x < w; x++, i++) {
        od[i] = table[picture.at(x, y)];
      }
    }
    return new Density(w, h, od);
  }

  private static float[] toTable(Polarity polarity, double darkest) {
    float[] table = new float[Picture.WHITE + 1];
    for (int v = 0; v <= Picture.WHITE; v++) {
      int light =
          switch (polarity) {
            case DARK_ON_LIGHT -> v;
            case LIGHT_ON_DARK -> Picture.WHITE - v;
          };
      double share = (double) light / Picture.WHITE;
      table[v] = (float) -Math.log10((share + darkest) / (1 + darkest));
    }
    return table;
  }

  /** Columns. */
  public int width() {
    return width;
  }

  /** Rows. */
  public int height() {
    return height;
  }

  /** Density in column x and row y. */
  public float at(int x, int y) {
    return od[y * width + x];
  }
}
