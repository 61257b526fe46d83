package cistern.gel;

import cistern.gel.bands.Band;
import cistern.gel.bands.LaneTrace;
import cistern.gel.bands.PairBands;
import cistern.gel.pairing.Matching;
import cistern.gel.reading.LaneReading.BandMark;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * The bands of a lane as they are listed: those more likely real than not, and the counterparts of
 * such.
 *
 * @param factor pixels of the picture in one that was read
 */
record Listing(int factor) {
  private static final double LIKELY = 0.5;

  /** The listings of the two lanes of a pair. */
  record Both(List<BandMark> csf, List<BandMark> serum) {}

  List<BandMark> alone(List<Band> bands) {
    return bands.stream()
        .filter(b -> b.probability() >= LIKELY)
        .map(b -> mark(b, OptionalInt.empty(), signal(b)))
        .toList();
  }

  Both of(PairBands pair, Matching matching) {
    boolean[] csfListed = likely(pair.csf());
    boolean[] serumListed = likely(pair.serum());
    for (int i = 0; i < csfListed.length; i++) {
      int j = matching.serumOf().get(i);
      if (j >= 0 && (csfListed[i] || serumListed[j])) {
        csfListed[i] = true;
        serumListed[j] = true;
      }
    }
    int[] csfIndex = indices(csfListed);
    int[] serumIndex = indices(serumListed);
    int[] back = new int[serumListed.length];
    Arrays.fill(back, -1);
    List<BandMark> left = new ArrayList<>();
    for (int i = 0; i < csfListed.length; i++) {
      int j = matching.serumOf().get(i);
      if (csfListed[i]) {
        Band b = pair.csf().get(i);
        String reason = signal(b) + response(b, pair.serumTrace(), "serum");
        left.add(mark(b, j < 0 ? OptionalInt.empty() : OptionalInt.of(serumIndex[j]), reason));
        if (j >= 0) {
          back[j] = csfIndex[i];
        }
      }
    }
    List<BandMark> right = new ArrayList<>();
    for (int j = 0; j < serumListed.length; j++) {
      if (serumListed[j]) {
        Band b = pair.serum().get(j);
        String reason = signal(b) + response(b, pair.csfTrace(), "CSF");
        right.add(mark(b, back[j] < 0 ? OptionalInt.empty() : OptionalInt.of(back[j]), reason));
      }
    }
    return new Both(left, right);
  }

  private static boolean[] likely(List<Band> bands) {
    boolean[] listed = new boolean[bands.size()];
    for (int i = 0; i < listed.length; i++) {
      listed[i] = bands.get(i).probability() >= LIKELY;
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
    return String.format(Locale.ROOT, "signal-to-noise %.0f", b.noise());
  }

  /** What the other lane shows at the band's place, as a share of its height. */
  private static String response(Band b, LaneTrace other, String name) {
    double share = b.strength() > 1e-6 ? other.above(b.row()) / b.strength() : 0;
    return String.format(Locale.ROOT, ", %s response %.0f %%", name, 100 * Math.max(0, share));
  }

  private BandMark mark(Band b, OptionalInt matched, String reason) {
    return new BandMark(
        b.y() * factor + 0.5 * (factor - 1),
        b.height() * factor,
        b.strength(),
        matched,
        b.probability(),
        reason);
  }
}
