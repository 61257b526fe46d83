package cistern.gel;

import cistern.bands.BandVerdict;
import cistern.fact.Facts;
import cistern.gel.bands.Band;
import cistern.gel.bands.LaneTrace;
import cistern.gel.bands.PairBands;
import cistern.gel.lanes.LaneKind;
import cistern.gel.lanes.LanePlace;
import cistern.gel.lanes.LanePlan.NamedPair;
import cistern.gel.net.PairMaps.Fault;
import cistern.gel.pairing.PairAnswer;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelProblem.Code;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.GelReading.PictureSeen;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.LaneReading.Quality;
import cistern.gel.reading.PairReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Puts what was found in a gel into a reading: problems, verdicts and what needs a person's eye.
 */
final class GelInterpreter {
  private final Facts facts;
  private final View view;
  private final Layout layout;
  private final PairRun run;
  private final PairJudge judge;

  GelInterpreter(Facts facts, View view, Layout layout, PairRun run) {
    this.facts = facts;
    this.view = view;
    this.layout = layout;
    this.run = run;
    this.judge = new PairJudge(facts, layout);
  }

  /**
   * The lanes of a pair that is whole, as the net sees them; a lane alone is seen beside itself.
   */
  private record Two(int csf, int serum) {}

  /** What is said of a lane. */
  private record Said(
      OptionalInt pair, List<Band> bands, List<BandMark> marks, double unreadable) {}

  private static Optional<Two> two(NamedPair pair) {
    return pair.csf().isPresent() && pair.serum().isPresent()
        ? Optional.of(new Two(pair.csf().getAsInt(), pair.serum().getAsInt()))
        : Optional.empty();
  }

  /** Lets the net see every pair and every lane that stands alone. */
  void see() {
    layout.pairs().stream().flatMap(p -> two(p).stream()).forEach(t -> run.see(t.csf, t.serum));
    alone().forEach(i -> run.see(i, i));
    run.tellDark();
  }

  private List<Integer> alone() {
    List<Integer> alone = new ArrayList<>();
    for (int i = 0; i < layout.lanes().size(); i++) {
      int lane = i;
      boolean isPaired =
          layout.pairs().stream()
              .flatMap(p -> two(p).stream())
              .anyMatch(t -> t.csf == lane || t.serum == lane);
      if (!isPaired && layout.kinds().get(i) != LaneKind.BLANK) {
        alone.add(i);
      }
    }
    return alone;
  }

  /** A pair both of whose lanes were read. */
  private record Whole(NamedPair named, PairBands bands, PairAnswer answer, boolean isHidden) {}

  /**
   * The reading.
   *
   * @param shades different samples of the picture
   */
  GelReading read(PictureSeen picture, int shades) {
    List<LaneTrace> traces = run.traces(facts);
    List<Optional<PairBands>> seen = new ArrayList<>();
    layout.pairs().forEach(pair -> seen.add(two(pair).map(t -> run.bands(t.csf, t.serum, traces))));
    Optional<ApplicationMark> mark = ApplicationMark.of(placed(seen));
    List<Optional<Whole>> pairs = new ArrayList<>();
    for (int i = 0; i < seen.size(); i++) {
      NamedPair named = layout.pairs().get(i);
      pairs.add(seen.get(i).map(b -> whole(named, b, mark)));
    }
    List<Said> lanes = said(traces, pairs);
    List<LaneGates.Judged> judged = new ArrayList<>();
    for (int i = 0; i < lanes.size(); i++) {
      double width = layout.lanes().get(i).width() * view.factor();
      Said said = lanes.get(i);
      judged.add(new LaneGates.Judged(width, traces.get(i), said.bands, said.unreadable));
    }
    LaneGates gates = new LaneGates(facts, shades, samples(judged));
    List<List<GelProblem>> troubles = troubles(gates, judged);
    List<PairReading> readings = new ArrayList<>();
    for (int i = 0; i < pairs.size(); i++) {
      NamedPair named = layout.pairs().get(i);
      readings.add(
          pairs.get(i).map(p -> judged(p, troubles, gates)).orElseGet(() -> lonely(named)));
    }
    return new GelReading(picture, lanes(troubles, lanes), readings, problems(mark));
  }

  private PairReading judged(Whole pair, List<List<GelProblem>> troubles, LaneGates gates) {
    PairReading reading = judge.pair(pair.named, pair.bands, pair.answer, troubles, gates);
    return pair.isHidden
        ? reading.lookedAt("a band may lie under the mark that runs across the lanes")
        : reading;
  }

  private List<ApplicationMark.Placed> placed(List<Optional<PairBands>> seen) {
    List<ApplicationMark.Placed> placed = new ArrayList<>();
    for (int i = 0; i < seen.size(); i++) {
      NamedPair named = layout.pairs().get(i);
      seen.get(i).ifPresent(b -> placed.add(placed(named, b)));
    }
    return placed;
  }

  private ApplicationMark.Placed placed(NamedPair pair, PairBands bands) {
    return new ApplicationMark.Placed(
        column(pair.csf().getAsInt()), column(pair.serum().getAsInt()), bands);
  }

  private double column(int lane) {
    return layout.lanes().get(lane).place(view.middleRow()).xCentre();
  }

  private Whole whole(NamedPair named, PairBands seen, Optional<ApplicationMark> mark) {
    ApplicationMark.Placed placed = placed(named, seen);
    PairBands bands = mark.map(m -> m.leftOut(placed)).orElse(seen);
    PairAnswer answer = judge.answer(bands);
    boolean isHidden = judge.isOneShort(answer) && mark.map(m -> m.isHiding(placed)).orElse(false);
    return new Whole(named, bands, answer, isHidden);
  }

  private List<Said> said(List<LaneTrace> traces, List<Optional<Whole>> pairs) {
    Listing listing = new Listing(view.factor());
    List<Said> said = new ArrayList<>();
    layout.lanes().forEach(l -> said.add(new Said(OptionalInt.empty(), List.of(), List.of(), 0)));
    for (int i : alone()) {
      PairBands bands = run.bands(i, i, traces);
      double unreadable = bands.fault(Fault.CSF_UNREADABLE);
      List<BandMark> marks = listing.alone(bands.csf());
      said.set(i, new Said(OptionalInt.empty(), bands.csf(), marks, unreadable));
    }
    for (int i = 0; i < pairs.size(); i++) {
      NamedPair named = layout.pairs().get(i);
      pairs.get(i).ifPresentOrElse(p -> list(p, listing, said), () -> number(named, said));
    }
    return said;
  }

  private static void list(Whole pair, Listing listing, List<Said> said) {
    OptionalInt number = OptionalInt.of(pair.named.number());
    Listing.Both both = listing.of(pair.bands, pair.answer.matching());
    said.set(
        pair.named.csf().getAsInt(),
        new Said(number, pair.bands.csf(), both.csf(), pair.bands.fault(Fault.CSF_UNREADABLE)));
    said.set(
        pair.named.serum().getAsInt(),
        new Said(
            number, pair.bands.serum(), both.serum(), pair.bands.fault(Fault.SERUM_UNREADABLE)));
  }

  private static void number(NamedPair pair, List<Said> said) {
    OptionalInt number = OptionalInt.of(pair.number());
    pair.csf().ifPresent(i -> said.set(i, paired(said.get(i), number)));
    pair.serum().ifPresent(i -> said.set(i, paired(said.get(i), number)));
  }

  private List<List<GelProblem>> troubles(LaneGates gates, List<LaneGates.Judged> judged) {
    List<List<GelProblem>> troubles = new ArrayList<>();
    for (int i = 0; i < judged.size(); i++) {
      boolean isBlank = layout.kinds().get(i) == LaneKind.BLANK;
      troubles.add(isBlank ? List.of() : gates.check(judged.get(i)));
    }
    return troubles;
  }

  private List<LaneGates.Judged> samples(List<LaneGates.Judged> lanes) {
    List<LaneGates.Judged> samples = new ArrayList<>();
    for (int i = 0; i < lanes.size(); i++) {
      if (layout.kinds().get(i) != LaneKind.BLANK) {
        samples.add(lanes.get(i));
      }
    }
    return samples;
  }

  private static Said paired(Said said, OptionalInt number) {
    return new Said(number, said.bands, said.marks, said.unreadable);
  }

  private List<LaneReading> lanes(List<List<GelProblem>> troubles, List<Said> said) {
    List<LaneReading> lanes = new ArrayList<>();
    for (int i = 0; i < said.size(); i++) {
      LanePlace place = layout.lanes().get(i).place(view.middleRow());
      lanes.add(
          new LaneReading(
              i,
              layout.kinds().get(i),
              said.get(i).pair,
              view.toPicture(place.xCentre()),
              place.width() * view.factor(),
              view.slope(place.slope()),
              quality(troubles.get(i)),
              troubles.get(i),
              said.get(i).marks,
              layout.isPlaced()));
    }
    return lanes;
  }

  private static Quality quality(List<GelProblem> troubles) {
    if (troubles.stream().anyMatch(p -> p.code().isStop())) {
      return Quality.UNREADABLE;
    }
    return troubles.isEmpty() ? Quality.GOOD : Quality.DOUBTFUL;
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
        List.of(problem.text()),
        List.of(problem));
  }

  private List<GelProblem> problems(Optional<ApplicationMark> mark) {
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
    if (layout.lanes().isEmpty()) {
      problems.add(
          new GelProblem(Code.FAINT, "no lane stands out from its ground in this picture"));
    }
    if (mark.isPresent()) {
      problems.add(
          new GelProblem(
              Code.APPLICATION_MARK,
              "a mark runs across the lanes; what lies on it was not taken for bands"));
    }
    if (layout.isNamed() && !layout.isControlled()) {
      problems.add(new GelProblem(Code.NO_CONTROLS, "no control lane is named on this gel"));
    }
    return problems;
  }
}
