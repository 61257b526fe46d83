package cistern.gel;

import cistern.fact.Facts;
import cistern.gel.bands.Band;
import cistern.gel.bands.LaneTrace;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelProblem.Code;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The gates that a lane must pass to be trusted. */
final class LaneGates {
  private final Facts facts;
  private final int shades;
  private final double load;
  private final boolean isBodied;
  private final double bandHeight;
  private final double lean;

  /**
   * A lane as it is judged: where it lies, what is seen on it, and what the net says against it.
   */
  record Judged(double width, LaneTrace trace, List<Band> bands, double unreadable) {
    List<Band> likely() {
      return bands.stream().filter(b -> b.probability() >= 0.5).toList();
    }

    BandSlant slant() {
      return BandSlant.of(trace.strip(), likely());
    }
  }

  LaneGates(Facts facts, int shades, List<Judged> lanes) {
    this.facts = facts;
    this.shades = shades;
    double[] loads = lanes.stream().mapToDouble(l -> l.trace.load()).toArray();
    this.load = median(loads);
    double body = facts.number("gel.lane.body-share") * load;
    long bodied = java.util.Arrays.stream(loads).filter(l -> l >= body).count();
    this.isBodied =
        load > facts.number("gel.lane.least-load")
            && bodied >= facts.number("gel.lane.bodied") * loads.length;
    this.bandHeight =
        median(
            lanes.stream().flatMap(l -> l.likely().stream()).mapToDouble(Band::height).toArray());
    this.lean =
        median(
            lanes.stream()
                .map(Judged::slant)
                .filter(s -> s.bands() > 0)
                .mapToDouble(BandSlant::lean)
                .toArray());
  }

  private static double median(double[] values) {
    java.util.Arrays.sort(values);
    return values.length == 0 ? 0 : values[values.length / 2];
  }

  /** Everything wrong with a lane. */
  List<GelProblem> check(Judged lane) {
    List<GelProblem> problems = new ArrayList<>();
    if (isEmpty(lane)) {
      problems.add(new GelProblem(Code.LANE_UNREADABLE, "nothing stands out from the ground"));
      String faint = text("%.3f OD above the ground", lane.trace.load());
      problems.add(new GelProblem(Code.FAINT, faint));
    } else if (lane.unreadable > 0.5) {
      problems.add(
          new GelProblem(
              Code.LANE_UNREADABLE, "what is seen on it is no run of bands: it is spoiled"));
    }
    if (shades < facts.number("gel.image.least-shades")) {
      problems.add(
          new GelProblem(
              Code.FAINT,
              shades + " shades in the whole picture: a step between two looks like a band"));
    }
    if (lane.width < facts.number("gel.lane.least-width")) {
      problems.add(
          new GelProblem(
              Code.LANE_UNREADABLE,
              text("too coarse to read, the lane is %.0f pixels wide", lane.width)));
    }
    double saturated = lane.trace.saturated();
    if (saturated > facts.number("gel.lane.most-saturated")) {
      String text = text("%.0f %% of its pixels are as dark as can be", 100 * saturated);
      problems.add(new GelProblem(Code.SATURATED, text));
    }
    if (isSmeared(lane)) {
      problems.add(new GelProblem(Code.SMEARED, "its bands are far wider than the gel's others"));
    }
    tilt(lane).ifPresent(problems::add);
    return problems;
  }

  /** Whether nothing was put on a lane or nothing took, on a gel whose lanes all have a body. */
  private boolean isEmpty(Judged lane) {
    boolean isFaint = lane.trace.load() < facts.number("gel.lane.least-share") * load;
    return lane.likely().isEmpty() && isBodied && isFaint;
  }

  private boolean isSmeared(Judged lane) {
    double[] heights = lane.likely().stream().mapToDouble(Band::height).toArray();
    return heights.length >= facts.number("gel.lane.smear-fewest")
        && quartile(heights) > facts.number("gel.lane.smear") * bandHeight;
  }

  /** The lower quartile: two bands that merge are wide, and their lane is not smeared. */
  private static double quartile(double[] heights) {
    double[] sorted = java.util.Arrays.stream(heights).sorted().toArray();
    return sorted[sorted.length / 4];
  }

  private Optional<GelProblem> tilt(Judged lane) {
    BandSlant slant = lane.slant();
    double most = facts.number("gel.lane.most-sag") * bandHeight / 2.355;
    if (slant.bands() < 2) {
      return Optional.empty();
    }
    double astray = Math.abs(slant.lean() - lean);
    if (astray > most) {
      String text = text("its bands run askew, by %.1f pixels at its edge", astray);
      return Optional.of(new GelProblem(Code.TILTED, text));
    }
    boolean isSagging = Math.abs(slant.sag()) > most;
    return isSagging
        ? Optional.of(
            new GelProblem(
                Code.TILTED, text("its bands sag by %.1f pixels", Math.abs(slant.sag()))))
        : Optional.empty();
  }

  /** A pair whose lanes carry very different amounts. */
  Optional<GelProblem> load(LaneTrace csf, LaneTrace serum) {
    double least = facts.number("gel.lane.least-load");
    double ratio = Math.max(least / 4, csf.load()) / Math.max(least / 4, serum.load());
    boolean isSeen = isBodied && Math.max(csf.load(), serum.load()) > least;
    boolean isEven =
        ratio >= facts.number("gel.load.least") && ratio <= facts.number("gel.load.most");
    return isEven || !isSeen
        ? Optional.empty()
        : Optional.of(
            new GelProblem(
                Code.LOAD_MISMATCH,
                text("the CSF lane carries %.2f times the stain of the serum lane", ratio)));
  }

  private static String text(String form, double number) {
    return String.format(Locale.ROOT, form, number);
  }
}
