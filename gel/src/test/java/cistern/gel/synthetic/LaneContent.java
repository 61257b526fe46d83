package cistern.gel.synthetic;

import java.util.ArrayList;
import java.util.List;

/**
 * What a lane holds along its axis: a floor, a skewed polyclonal hump and bands.
 *
 * @param floor concentration at the ends, OD
 * @param hump the polyclonal zone
 * @param bands the bands, in any order
 */
record LaneContent(double floor, Hump hump, List<TrueBand> bands) {
  LaneContent {
    bands = List.copyOf(bands);
  }

  /** Height in OD, centre and width in pixels, skewness as the ratio of the two half widths. */
  record Hump(double height, double centre, double width, double skew) {
    double at(double y) {
      double w = y < centre ? width * skew : width / skew;
      double t = (y - centre) / w;
      return height * Math.exp(-0.5 * t * t);
    }
  }

  /** Centre in pixels, height in OD, σ in pixels, Lorentzian share, asymmetry of the flanks. */
  record TrueBand(double y, double height, double sigma, double lorentz, double asymmetry) {
    double at(double q) {
      double d = q - y;
      double s = d < 0 ? sigma * (1 + asymmetry) : sigma * (1 - asymmetry);
      double t = d / s;
      double gauss = Math.exp(-0.5 * t * t);
      double h = 1.1774 * s;
      double lorentzian = 1 / (1 + d * d / (h * h));
      return height * ((1 - lorentz) * gauss + lorentz * lorentzian);
    }
  }

  LaneContent with(List<TrueBand> more) {
    List<TrueBand> all = new ArrayList<>(bands);
    all.addAll(more);
    return new LaneContent(floor, hump, all);
  }

  /** The stained density along the lane for a load and a ceiling of the stain. */
  float[] toDensity(int height, double load, double ceiling) {
    double[] c = new double[height];
    for (int y = 0; y < height; y++) {
      c[y] = floor + hump.at(y);
    }
    for (TrueBand band : bands) {
      int reach = (int) Math.ceil(14 * band.sigma());
      int from = Math.max(0, (int) band.y() - reach);
      int to = Math.min(height, (int) band.y() + reach);
      for (int y = from; y < to; y++) {
        c[y] += band.at(y);
      }
    }
    float[] od = new float[height];
    for (int y = 0; y < height; y++) {
      od[y] = (float) (ceiling * (1 - Math.exp(-load * c[y] / ceiling)));
    }
    return od;
  }
}
