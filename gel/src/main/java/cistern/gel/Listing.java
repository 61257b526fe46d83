package cistern.gel;

import cistern.gel.bands.Band;
import cistern.gel.bands.LaneBands;
import cistern.gel.pairing.PairBands;
import cistern.gel.reading.LaneReading.BandMark;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * The bands of a lane as they are listed: those more likely real than not, and the counterparts of
 * such.
 */
record Listing(List<BandMark> marks, OptionalInt pair) {
  private static final double LIKELY = 0.5;

  /** The listings of the two lanes of a pair. */
  record Both(Listing csf, Listing serum) {}

  Listing withPair(int number) {
    return new Listing(marks, OptionalInt.of(number));
  }

  static Listing of(LaneBands lane, OptionalInt pair, int factor) {
    List<BandMark> marks = new ArrayList<>();
    for (Band b : lane.bands()) {
      if (b.probability() >= LIKELY) {
        marks.add(mark(b, OptionalInt.empty(), signal(b), factor));
      }
    }
    return new Listing(marks, pair);
  }

  static Both of(LaneBands csf, LaneBands serum, PairBands pair, int factor) {
    int n = csf.bands().size();
    int m = serum.bands().size();
    boolean[] csfListed = new boolean[n];
    boolean[] serumListed = new boolean[m];
    for (int i = 0; i < n; i++) {
      csfListed[i] = csf.bands().get(i).probability() >= LIKELY;
    }
    for (int j = 0; j < m; j++) {
      serumListed[j] = serum.bands().get(j).probability() >= LIKELY;
    }
    for (int i = 0; i < n; i++) {
      int j = pair.counterpart().get(i);
      if (j >= 0 && (csfListed[i] || serumListed[j])) {
        csfListed[i] = true;
        serumListed[j] = true;
      }
    }
    int[] csfIndex = indices(csfListed);
    int[] serumIndex = indices(serumListed);
    List<BandMark> left = new ArrayList<>();
    OptionalInt[] back = new OptionalInt[m];
    java.util.Arrays.fill(back, OptionalInt.empty());
    for (int i = 0; i < n; i++) {
      if (csfListed[i]) {
        int j = pair.counterpart().get(i);
        if (j >= 0) {
          back[j] = OptionalInt.of(csfIndex[i]);
        }
        Band b = csf.bands().get(i);
        String reason =
            signal(b)
                + String.format(
                    Locale.ROOT, ", serum response %.0f %%", 100 * pair.response().get(i));
        left.add(
            mark(b, j >= 0 ? OptionalInt.of(serumIndex[j]) : OptionalInt.empty(), reason, factor));
      }
    }
    List<BandMark> right = new ArrayList<>();
    for (int j = 0; j < m; j++) {
      if (serumListed[j]) {
        Band b = serum.bands().get(j);
        String reason =
            signal(b) + (back[j].isPresent() ? ", also in the CSF" : ", not in the CSF");
        right.add(mark(b, back[j], reason, factor));
      }
    }
    return new Both(
        new Listing(left, OptionalInt.empty()), new Listing(right, OptionalInt.empty()));
  }

  private static int[] indices(boolean[] listed) {
    int[] index = new int[listed.length];
    int next = 0;
    for (int i = 0; i < listed.length; i++) {
      index[i] = listed[i] ? next++ : -1;
    }
    return index;
  }

  private static String signal(Band b) {
    return String.format(Locale.ROOT, "signal-to-noise %.0f", b.signalToNoise());
  }

  private static BandMark mark(Band b, OptionalInt matched, String reason, int factor) {
    return new BandMark(
        b.y() * factor + 0.5 * (factor - 1),
        b.fullWidth() * factor,
        b.height(),
        matched,
        b.probability(),
        reason);
  }
}
