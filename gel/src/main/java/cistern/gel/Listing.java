package cistern.gel;

import cistern.gel.bands.Band;
import cistern.gel.bands.LaneBands;
import cistern.gel.pairing.PairBands;
import cistern.gel.reading.LaneReading.BandMark;
import java.util.ArrayList;
import java.util.Arrays;
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
    boolean[] csfListed = likely(csf);
    boolean[] serumListed = likely(serum);
    for (int i = 0; i < csfListed.length; i++) {
      int j = pair.counterpart().get(i);
      if (j >= 0 && (csfListed[i] || serumListed[j])) {
        csfListed[i] = true;
        serumListed[j] = true;
      }
    }
    int[] csfIndex = indices(csfListed);
    int[] serumIndex = indices(serumListed);
    int[] back = new int[serumIndex.length];
    Arrays.fill(back, -1);
    List<BandMark> left = new ArrayList<>();
    for (int i = 0; i < csfListed.length; i++) {
      if (csfListed[i]) {
        int j = pair.counterpart().get(i);
        if (j >= 0) {
          back[j] = csfIndex[i];
        }
        left.add(
            mark(
                csf.bands().get(i),
                index(j < 0 ? j : serumIndex[j]),
                reason(csf, pair, i),
                factor));
      }
    }
    return new Both(
        new Listing(left, OptionalInt.empty()),
        new Listing(serumMarks(serum, serumListed, back, factor), OptionalInt.empty()));
  }

  private static List<BandMark> serumMarks(
      LaneBands serum, boolean[] listed, int[] back, int factor) {
    List<BandMark> marks = new ArrayList<>();
    for (int j = 0; j < listed.length; j++) {
      if (listed[j]) {
        Band b = serum.bands().get(j);
        String reason = signal(b) + (back[j] >= 0 ? ", also in the CSF" : ", not in the CSF");
        marks.add(mark(b, index(back[j]), reason, factor));
      }
    }
    return marks;
  }

  private static String reason(LaneBands csf, PairBands pair, int i) {
    return signal(csf.bands().get(i))
        + String.format(Locale.ROOT, ", serum response %.0f %%", 100 * pair.response().get(i));
  }

  private static OptionalInt index(int found) {
    return found < 0 ? OptionalInt.empty() : OptionalInt.of(found);
  }

  private static boolean[] likely(LaneBands lane) {
    boolean[] listed = new boolean[lane.bands().size()];
    for (int i = 0; i < listed.length; i++) {
      listed[i] = lane.bands().get(i).probability() >= LIKELY;
    }
    return listed;
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
