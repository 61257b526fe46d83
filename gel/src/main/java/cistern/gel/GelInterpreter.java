package cistern.gel;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.fact.Facts;
import cistern.gel.bands.GelBands;
import cistern.gel.bands.LaneBands;
import cistern.gel.lanes.LanePlan.NamedPair;
import cistern.gel.pairing.PairBands;
import cistern.gel.pairing.PairFinder;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelProblem.Code;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.GelReading.PictureSeen;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.Quality;
import cistern.gel.reading.PairReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Puts what was found in a gel into a reading: problems, verdicts and what needs a person's eye.
 */
final class GelInterpreter {
  private final Facts facts;
  private final GelBands gel;
  private final Layout layout;
  private final int factor;
  private final LaneGates gates;
  private final int cutOff;

  GelInterpreter(Facts facts, GelBands gel, Layout layout, int factor, LaneGates gates) {
    this.facts = facts;
    this.gel = gel;
    this.layout = layout;
    this.factor = factor;
    this.gates = gates;
    this.cutOff = (int) facts.number("bands.cut-off");
  }

  GelReading read(PictureSeen picture, int rows) {
    List<List<GelProblem>> troubles = gel.lanes().stream().map(gates::check).toList();
    PairFinder finder = new PairFinder(facts);
    PairFinder.Habits habits = finder.habits(gel, together(), rows);
    boolean isSure = isSure(finder, troubles, rows);
    List<PairReading> pairs = new ArrayList<>();
    List<Listing> listings = new ArrayList<>();
    for (int i = 0; i < gel.lanes().size(); i++) {
      listings.add(Listing.of(gel.lanes().get(i), OptionalInt.empty(), factor));
    }
    for (NamedPair named : layout.pairs()) {
      if (named.csf().isPresent() && named.serum().isPresent()) {
        int c = named.csf().getAsInt();
        int s = named.serum().getAsInt();
        PairBands bands = finder.compare(gel, lanes(c, s), rows, habits);
        Listing.Both both = Listing.of(gel.lanes().get(c), gel.lanes().get(s), bands, factor);
        listings.set(c, both.csf().withPair(named.number()));
        listings.set(s, both.serum().withPair(named.number()));
        pairs.add(pair(named, bands, troubles, isSure));
      } else {
        named.csf().ifPresent(c -> listings.set(c, listings.get(c).withPair(named.number())));
        named.serum().ifPresent(s -> listings.set(s, listings.get(s).withPair(named.number())));
        pairs.add(lonely(named));
      }
    }
    return new GelReading(picture, lanes(troubles, listings), pairs, problems());
  }

  /** Whether the names are known to lie on the right lanes. */
  private boolean isSure(PairFinder finder, List<List<GelProblem>> troubles, int rows) {
    NamingCheck check = new NamingCheck(facts.number("gel.naming.least"));
    return switch (layout.naming()) {
      case NONE -> false;
      case SURE -> true;
      case GUESSED ->
          check.isBorneOut(
              finder,
              gel,
              layout.pairs(),
              lane -> quality(troubles.get(lane)) != Quality.UNREADABLE,
              rows);
    };
  }

  private PairFinder.Lanes lanes(int csf, int serum) {
    return new PairFinder.Lanes(gel.lanes().get(csf), gel.lanes().get(serum));
  }

  /** The pairs of which both lanes are there. */
  private List<PairFinder.Lanes> together() {
    return layout.pairs().stream()
        .filter(p -> p.csf().isPresent() && p.serum().isPresent())
        .map(p -> lanes(p.csf().getAsInt(), p.serum().getAsInt()))
        .toList();
  }

  private List<LaneReading> lanes(List<List<GelProblem>> troubles, List<Listing> listings) {
    List<LaneReading> lanes = new ArrayList<>();
    for (int i = 0; i < gel.lanes().size(); i++) {
      LaneBands lane = gel.lanes().get(i);
      lanes.add(
          new LaneReading(
              i,
              layout.kinds().get(i),
              listings.get(i).pair(),
              lane.place().xCentre() * factor + 0.5 * (factor - 1),
              lane.place().width() * factor,
              lane.place().slope(),
              quality(troubles.get(i)),
              troubles.get(i),
              listings.get(i).marks()));
    }
    return lanes;
  }

  private static Quality quality(List<GelProblem> troubles) {
    if (troubles.stream().anyMatch(p -> p.code().isStop())) {
      return Quality.UNREADABLE;
    }
    return troubles.isEmpty() ? Quality.GOOD : Quality.DOUBTFUL;
  }

  private PairReading pair(
      NamedPair named, PairBands bands, List<List<GelProblem>> troubles, boolean isSure) {
    List<GelProblem> problems = new ArrayList<>();
    problems.addAll(ofLane(named.csf().getAsInt(), "CSF", troubles));
    problems.addAll(ofLane(named.serum().getAsInt(), "serum", troubles));
    boolean isUnreadable = problems.stream().anyMatch(p -> p.code().isStop());
    if (!isUnreadable && isMispaired(bands)) {
      problems.add(mispaired(bands));
    }
    gates.load(named.csf().getAsInt(), named.serum().getAsInt()).ifPresent(problems::add);
    boolean isStopped = problems.stream().anyMatch(p -> p.code().isStop());
    double positive = bands.csfOnly().atLeast(cutOff);
    PairReading.Counts counts =
        new PairReading.Counts(
            bands.csfOnly().median(),
            bands.shared(),
            bands.serumOnly(),
            bands.csfOnly().chances(),
            positive,
            bands.probabilityOfPattern(cutOff));
    boolean isReviewed = isStopped || !isSure || !problems.isEmpty() || isDoubtful(bands, positive);
    return new PairReading(
        named.number(),
        named.csf(),
        named.serum(),
        Optional.of(counts),
        isStopped ? Optional.empty() : Optional.of(pattern(bands)),
        isStopped ? BandVerdict.UNDETERMINED : verdict(counts.csfOnly()),
        isReviewed,
        problems);
  }

  /** Few bands of the serum alone are asked for more than many: they occur in a person's own. */
  private boolean isMispaired(PairBands bands) {
    boolean isFew = bands.serumOnly() < facts.number("gel.identity.fewest");
    return bands.probabilityOfOther()
        > facts.number(isFew ? "gel.identity.marked-few" : "gel.identity.marked");
  }

  private boolean isDoubtful(PairBands bands, double positive) {
    double least = facts.number("gel.review.least");
    return (positive > least && positive < 1 - least)
        || bands.probabilityOfOther() > facts.number("gel.identity.doubtful");
  }

  private List<GelProblem> ofLane(int lane, String name, List<List<GelProblem>> troubles) {
    return troubles.get(lane).stream()
        .map(p -> new GelProblem(p.code(), "the " + name + " lane: " + p.text()))
        .toList();
  }

  private static GelProblem mispaired(PairBands bands) {
    return new GelProblem(
        Code.MISPAIRED_SERUM,
        String.format(
            Locale.ROOT,
            "%d serum bands have no counterpart in the CSF and %d have: this may be another"
                + " person's serum; check names and dates of both samples",
            bands.serumOnly(),
            bands.shared()));
  }

  private PairReading lonely(NamedPair named) {
    GelProblem problem =
        layout
            .difference()
            .map(
                d ->
                    new GelProblem(
                        Code.LANE_COUNT_DIFFERS,
                        d.named() + " lanes are named and " + d.found() + " were found"))
            .orElseGet(
                () ->
                    new GelProblem(
                        Code.LANE_MISSING,
                        named.csf().isPresent()
                            ? "the pair has no serum lane"
                            : "the pair has no CSF lane"));
    return new PairReading(
        named.number(),
        named.csf(),
        named.serum(),
        Optional.empty(),
        Optional.empty(),
        BandVerdict.UNDETERMINED,
        true,
        List.of(problem));
  }

  /** The pattern from the counts, as a laboratory would name it; a ladder wins. */
  private BandPattern pattern(PairBands bands) {
    if (bands.isLadder()) {
      return BandPattern.LADDER;
    }
    boolean isLocal = bands.csfOnly().median() >= cutOff;
    if (bands.shared() > 0) {
      return isLocal ? BandPattern.LOCAL_AND_SYSTEMIC : BandPattern.SYSTEMIC;
    }
    return isLocal ? BandPattern.LOCAL : BandPattern.NORMAL;
  }

  private BandVerdict verdict(int csfOnly) {
    if (csfOnly >= cutOff) {
      return BandVerdict.POSITIVE;
    }
    return csfOnly > 0 ? BandVerdict.BORDERLINE : BandVerdict.NEGATIVE;
  }

  private List<GelProblem> problems() {
    List<GelProblem> problems = new ArrayList<>();
    layout
        .difference()
        .ifPresent(
            d ->
                problems.add(
                    new GelProblem(
                        Code.LANE_COUNT_DIFFERS,
                        d.named()
                            + " lanes are named and "
                            + d.found()
                            + " were found: name every lane from the left, or give their places")));
    if (gel.lanes().isEmpty()) {
      problems.add(
          new GelProblem(Code.FAINT, "no lane stands out from its ground in this picture"));
    }
    if (gel.marks() > 0) {
      problems.add(
          new GelProblem(
              Code.APPLICATION_MARK,
              "a band on one straight line through most lanes is taken for the applicator's mark"
                  + " and not counted"));
    }
    if (layout.isNamed() && !layout.isControlled()) {
      problems.add(new GelProblem(Code.NO_CONTROLS, "no control lane is named on this gel"));
    }
    return problems;
  }
}
