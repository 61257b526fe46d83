package cistern.gel;

import cistern.fact.Facts;
import cistern.gel.bands.Alignment;
import cistern.gel.bands.LaneTrace;
import cistern.gel.bands.PairBands;
import cistern.gel.bands.Strip;
import cistern.gel.lanes.FoundLane;
import cistern.gel.net.Nets;
import cistern.gel.net.PairMaps;
import cistern.gel.net.PairMaps.Row;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Runs the net over pairs of lanes and measures in the picture what it sees.
 *
 * <p>What is dark can only be told when bands are known: they stand out from the lane they lie on.
 */
final class PairRun {
  /** How far the strips reach beyond the lanes' ends, over the lanes' length. */
  private static final double BEYOND = 0.1;

  private static final double LIKELY = 0.5;
  private static final int BESIDE = 14;

  private final View view;
  private final List<FoundLane> lanes;
  private final List<Strip> strips;
  private final Map<List<Integer>, PairMaps> maps = new HashMap<>();
  private boolean isDark = true;

  PairRun(View view, List<FoundLane> lanes) {
    this.view = view;
    this.lanes = lanes;
    double first = 0;
    double last = 0;
    for (FoundLane lane : lanes) {
      first += lane.course().firstRow() / lanes.size();
      last += lane.course().lastRow() / lanes.size();
    }
    double more = BEYOND * (last - first);
    Strip.Rows rows = new Strip.Rows(first - more, last + more);
    this.strips = new ArrayList<>();
    lanes.forEach(l -> strips.add(Strip.of(view.plane(), l, rows)));
  }

  /**
   * Lets the net see two lanes, which may be one and the same; again, once it is known how far the
   * serum's bands lie aside: the net compares row by row.
   */
  void see(int csf, int serum) {
    PairMaps said = said(csf, serum);
    Alignment alignment = Alignment.of(said);
    if (csf != serum && alignment.isAside()) {
      Strip.Rows beside = alignment.of(strips.get(csf).rows());
      strips.set(serum, Strip.of(view.plane(), lanes.get(serum), beside));
      said = said(csf, serum);
    }
    maps.put(List.of(csf, serum), said);
  }

  private PairMaps said(int csf, int serum) {
    return Nets.started().pair(Strip.scaled(strips.get(csf), strips.get(serum)));
  }

  /** Tells from all that was seen whether stain is dark. */
  void tellDark() {
    double bands = 0;
    double lanes = 0;
    for (Map.Entry<List<Integer>, PairMaps> e : maps.entrySet()) {
      bands += contrast(strips.get(e.getKey().get(0)), e.getValue(), Row.CSF);
      bands += contrast(strips.get(e.getKey().get(1)), e.getValue(), Row.SERUM);
      lanes += strips.get(e.getKey().get(0)).body() + strips.get(e.getKey().get(1)).body();
    }
    isDark = (Math.abs(bands) > 1e-6 ? bands : lanes) <= 0;
  }

  private static double contrast(Strip strip, PairMaps maps, Row what) {
    float[] profile = strip.profile();
    double sum = 0;
    for (int y = 0; y < profile.length; y++) {
      if (maps.at(what, y) >= LIKELY) {
        double above = profile[Math.max(0, y - BESIDE)];
        double below = profile[Math.min(profile.length - 1, y + BESIDE)];
        sum += Math.clamp(profile[y] - 0.5 * (above + below), -0.2, 0.2);
      }
    }
    return sum;
  }

  /** Whether stain is dark in the view. */
  boolean isDark() {
    return isDark;
  }

  /** What the picture shows along each lane. */
  List<LaneTrace> traces(Facts facts) {
    LaneTrace.Scale scale =
        new LaneTrace.Scale(
            view.plane(),
            isDark,
            facts.number("gel.image.darkest"),
            facts.number("gel.lane.darkest"));
    List<LaneTrace> traces = new ArrayList<>();
    strips.forEach(s -> traces.add(LaneTrace.of(s, scale)));
    return traces;
  }

  /** The bands of two lanes that the net has seen. */
  PairBands bands(int csf, int serum, List<LaneTrace> traces) {
    PairMaps seen = maps.get(List.of(csf, serum));
    if (seen == null) {
      throw new IllegalStateException("the net has not seen these lanes");
    }
    return PairBands.of(seen, traces.get(csf), traces.get(serum));
  }
}
