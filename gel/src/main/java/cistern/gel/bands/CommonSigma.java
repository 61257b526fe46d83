package cistern.gel.bands;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The band width that a gel's lanes share, learned from its strongest bands: for each the scale at
 * which the normalised second derivative answers most.
 */
final class CommonSigma {
  private final double[] scales;
  private final double fallback;
  private final double leastSignal;

  /** A band's answer at its best scale. */
  private record Vote(double sigma, double weight) {}

  /**
   * @param leastSignal least answer of a vote over the usual size of the answers at its scale,
   *     which is noise
   */
  CommonSigma(double[] scales, double fallback, double leastSignal) {
    this.scales = scales.clone();
    this.fallback = fallback;
    this.leastSignal = leastSignal;
  }

  /** The weighted median over the strongest votes of all profiles; the fallback without such. */
  double of(List<float[]> profiles) {
    List<Vote> votes = new ArrayList<>();
    for (float[] profile : profiles) {
      votes(profile, votes);
    }
    votes.sort(Comparator.comparingDouble(Vote::weight).reversed());
    if (votes.isEmpty()) {
      return fallback;
    }
    double top = votes.get(Math.min(votes.size() - 1, 4)).weight();
    List<Vote> strong =
        new ArrayList<>(votes.stream().limit(60).filter(v -> v.weight() > 0.2 * top).toList());
    strong.sort(Comparator.comparingDouble(Vote::sigma));
    double sum = strong.stream().mapToDouble(Vote::weight).sum();
    for (Vote v : strong) {
      sum -= 2 * v.weight();
      if (sum <= 0) {
        return v.sigma();
      }
    }
    return fallback;
  }

  private void votes(float[] profile, List<Vote> votes) {
    float[][] answers = new float[scales.length][];
    for (int s = 0; s < scales.length; s++) {
      answers[s] = normalised(profile, scales[s]);
    }
    double[] usual = new double[scales.length];
    for (int s = 0; s < scales.length; s++) {
      usual[s] = usualSize(answers[s]);
    }
    int margin = (int) (4 * scales[scales.length - 1]);
    for (int y = margin; y < profile.length - margin; y++) {
      for (int s = 1; s + 1 < scales.length; s++) {
        float v = answers[s][y];
        if (v > answers[s][y - 1]
            && v >= answers[s][y + 1]
            && v > answers[s - 1][y]
            && v >= answers[s + 1][y]
            && v > leastSignal * usual[s]) {
          double a = answers[s - 1][y];
          double b = answers[s + 1][y];
          double shift = 0.5 * (a - b) / (a - 2 * v + b);
          double ratio = Math.log(scales[s + 1] / scales[s]);
          votes.add(new Vote(scales[s] * Math.exp(shift * ratio), v));
        }
      }
    }
  }

  private static double usualSize(float[] answer) {
    float[] sizes = new float[answer.length];
    for (int y = 0; y < sizes.length; y++) {
      sizes[y] = Math.abs(answer[y]);
    }
    Arrays.sort(sizes);
    return sizes[sizes.length / 2];
  }

  /** scale^(3/2) times the negative second derivative of the profile smoothed at a scale. */
  private static float[] normalised(float[] profile, double scale) {
    float[] answer = BandFilter.of(scale, scale).apply(profile);
    // With σ = scale the unit answer stands for 2^(−3/2) σ^(−2) of second derivative.
    float factor = (float) (1 / Math.sqrt(scale));
    for (int y = 0; y < answer.length; y++) {
      answer[y] *= factor;
    }
    return answer;
  }
}
