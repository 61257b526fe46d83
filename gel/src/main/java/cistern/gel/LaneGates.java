package cistern.gel;

import cistern.fact.Facts;
import cistern.gel.bands.Band;
import cistern.gel.bands.GelBands;
import cistern.gel.bands.LaneBands;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelProblem.Code;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The gates that a lane must pass to be trusted. */
final class LaneGates {
  private final Facts facts;
  private final GelBands gel;
  private final int shades;
  private final double usual;

  LaneGates(Facts facts, GelBands gel, int shades) {
    this.facts = facts;
    this.gel = gel;
    this.shades = shades;
    double[] contrasts =
        gel.lanes().stream().mapToDouble(l -> l.condition().contrast()).sorted().toArray();
    this.usual = contrasts.length == 0 ? 0 : contrasts[contrasts.length / 2];
  }

  /** Everything wrong with a lane. */
  List<GelProblem> check(LaneBands lane) {
    List<GelProblem> problems = new ArrayList<>();
    double contrast = lane.condition().contrast();
    if (isEmpty(lane)) {
      problems.add(new GelProblem(Code.LANE_UNREADABLE, "nothing stands out from the ground"));
      problems.add(new GelProblem(Code.FAINT, text("%.3f OD above the ground", contrast)));
    }
    if (shades < facts.number("gel.image.least-shades")) {
      problems.add(
          new GelProblem(
              Code.FAINT,
              shades + " shades in the whole picture: a step between two looks like a band"));
    }
    boolean isCoarse =
        gel.sigma() < facts.number("gel.lane.least-sigma")
            || lane.place().width() < facts.number("gel.lane.least-width");
    if (isCoarse) {
      problems.add(
          new GelProblem(
              Code.LANE_UNREADABLE,
              text("too coarse to read, the lane is %.0f pixels wide", lane.place().width())));
    }
    double saturated = lane.condition().saturated();
    if (saturated > facts.number("gel.lane.most-saturated")) {
      problems.add(
          new GelProblem(
              Code.SATURATED,
              text("%.0f %% of its pixels are as dark as can be", 100 * saturated)));
    }
    if (isSmeared(lane)) {
      problems.add(new GelProblem(Code.SMEARED, "its bands are far wider than the gel's others"));
    }
    tilt(lane).ifPresent(problems::add);
    return problems;
  }

  private Optional<GelProblem> tilt(LaneBands lane) {
    double most = facts.number("gel.lane.most-sag") * gel.sigma();
    if (lane.astray() > most) {
      String text = text("its bands run askew, by %.1f pixels at its edge", lane.astray());
      return Optional.of(new GelProblem(Code.TILTED, text));
    }
    boolean isSagging = lane.likely() >= 2 && lane.sag() > most;
    return isSagging
        ? Optional.of(new GelProblem(Code.TILTED, text("its bands sag by %.1f pixels", lane.sag())))
        : Optional.empty();
  }

  /**
   * Whether nothing was put on a lane or nothing took: it hardly stands out from the ground, or it
   * has no bands and stands out little or evenly, as the ground of a lane does without IgG.
   */
  private boolean isEmpty(LaneBands lane) {
    double contrast = lane.condition().contrast();
    double swell = contrast - lane.condition().load();
    boolean isBare = lane.likely() == 0;
    boolean isFlat =
        contrast < facts.number("gel.lane.flat-share") * usual
            && swell < facts.number("gel.lane.least-swell") * usual;
    return contrast < facts.number("gel.lane.least-contrast")
        || contrast < facts.number("gel.lane.least-share") * usual
        || (isBare && (isFlat || contrast < facts.number("gel.lane.least-share-bare") * usual));
  }

  private boolean isSmeared(LaneBands lane) {
    double[] widths =
        lane.bands().stream()
            .filter(b -> b.probability() > 0.5)
            .mapToDouble(Band::sigma)
            .sorted()
            .toArray();
    return widths.length >= facts.number("gel.lane.smear-fewest")
        && widths[widths.length / 2] > facts.number("gel.lane.smear") * gel.sigma();
  }

  /** A pair whose lanes carry very different amounts. */
  Optional<GelProblem> load(int csf, int serum) {
    double ratio =
        gel.lanes().get(csf).condition().load()
            / Math.max(1e-6, gel.lanes().get(serum).condition().load());
    boolean isEven =
        ratio >= facts.number("gel.load.least") && ratio <= facts.number("gel.load.most");
    return isEven
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
