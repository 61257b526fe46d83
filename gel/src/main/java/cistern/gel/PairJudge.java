package cistern.gel;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.fact.Facts;
import cistern.gel.bands.PairBands;
import cistern.gel.lanes.LanePlan.NamedPair;
import cistern.gel.net.PairMaps.Fault;
import cistern.gel.pairing.Ladder;
import cistern.gel.pairing.PairAnswer;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelProblem.Code;
import cistern.gel.reading.PairReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What is said of a pair of lanes, and whether a person must look at it. */
final class PairJudge {
  private final Facts facts;
  private final Layout layout;
  private final int cutOff;

  PairJudge(Facts facts, Layout layout) {
    this.facts = facts;
    this.layout = layout;
    this.cutOff = (int) facts.number("bands.cut-off");
  }

  /** The answer that the bands of a pair give. */
  PairAnswer answer(PairBands bands) {
    return PairAnswer.of(bands, ladder());
  }

  private Ladder ladder() {
    return new Ladder(
        (int) facts.number("gel.ladder.fewest"),
        facts.number("gel.ladder.share"),
        facts.number("gel.ladder.widest"),
        facts.number("gel.ladder.farthest"),
        facts.number("gel.ladder.uneven"),
        facts.number("gel.ladder.uneven-wide"));
  }

  /** Whether one band more would make the answer another. */
  boolean isOneShort(PairAnswer answer) {
    return answer.csfOnly().median() == cutOff - 1;
  }

  PairReading pair(
      NamedPair named,
      PairBands bands,
      PairAnswer answer,
      List<List<GelProblem>> troubles,
      LaneGates gates) {
    List<GelProblem> problems = new ArrayList<>();
    problems.addAll(ofLane(named.csf().getAsInt(), "CSF", troubles));
    problems.addAll(ofLane(named.serum().getAsInt(), "serum", troubles));
    boolean isUnreadable = problems.stream().anyMatch(p -> p.code().isStop());
    if (!isUnreadable && isMispaired(bands, answer)) {
      problems.add(mispaired(answer));
    }
    gates.load(bands.csfTrace(), bands.serumTrace()).ifPresent(problems::add);
    boolean isStopped = problems.stream().anyMatch(p -> p.code().isStop());
    double positive = answer.csfOnly().atLeast(cutOff);
    PairReading.Counts counts =
        new PairReading.Counts(
            answer.csfOnly().median(),
            answer.shared(),
            answer.serumOnly(),
            answer.csfOnly().chances(),
            positive,
            answer.probabilityOfPattern(cutOff));
    return new PairReading(
        named.number(),
        named.csf(),
        named.serum(),
        Optional.of(counts),
        isStopped ? Optional.empty() : Optional.of(pattern(answer)),
        isStopped ? BandVerdict.UNDETERMINED : verdict(counts.csfOnly()),
        review(bands, answer, problems),
        problems);
  }

  /**
   * Serum bands that the CSF lacks: systemic bands pass into it, so that few are a person's own.
   * Where a few stand beside a CSF without bands of its own, they may be faint ones that did pass.
   */
  private boolean isMispaired(PairBands bands, PairAnswer answer) {
    double fewest = facts.number("gel.identity.fewest");
    boolean isMany = answer.serumOnly() > fewest && answer.serumOnly() > answer.shared();
    boolean isApart = answer.shared() == 0 && answer.csfOnly().median() >= cutOff;
    boolean isOther = bands.fault(Fault.OTHER_SERUM) > facts.number("gel.identity.marked");
    return isMany || (answer.serumOnly() >= fewest && (isApart || isOther));
  }

  /** Why a person must look at a pair. */
  private List<String> review(PairBands bands, PairAnswer answer, List<GelProblem> problems) {
    List<String> reasons = new ArrayList<>();
    problems.forEach(p -> reasons.add(p.text()));
    if (!layout.isNamed()) {
      reasons.add("nobody named the lanes");
    }
    layout.doubt().ifPresent(reasons::add);
    double positive = answer.csfOnly().atLeast(cutOff);
    double least = facts.number("gel.review.least");
    if (positive > least && positive < 1 - least) {
      reasons.add(
          String.format(Locale.ROOT, "the chance of %d bands or more is %.2f", cutOff, positive));
    }
    int csfOnly = answer.csfOnly().median();
    if (csfOnly >= cutOff && csfOnly - answer.serumOnly() < cutOff) {
      reasons.add("a serum band has no counterpart in the CSF, and may be one of its bands");
    }
    if (bands.fault(Fault.OTHER_SERUM) > facts.number("gel.identity.doubtful")
        || answer.serumOnly() >= facts.number("gel.identity.fewest")) {
      reasons.add("the serum may be another person's");
    }
    double unreadable =
        Math.max(bands.fault(Fault.CSF_UNREADABLE), bands.fault(Fault.SERUM_UNREADABLE));
    if (unreadable > facts.number("gel.review.unreadable")) {
      reasons.add("one of the lanes may be spoiled");
    }
    if (bands.maps().unlike() > facts.number("gel.review.unlike")) {
      reasons.add("the pair is unlike those that the reader was trained on");
    }
    return reasons.stream().distinct().toList();
  }

  private List<GelProblem> ofLane(int lane, String name, List<List<GelProblem>> troubles) {
    return troubles.get(lane).stream()
        .map(p -> new GelProblem(p.code(), "the " + name + " lane: " + p.text()))
        .toList();
  }

  private static GelProblem mispaired(PairAnswer answer) {
    return new GelProblem(
        Code.MISPAIRED_SERUM,
        String.format(
            Locale.ROOT,
            "%d serum bands have no counterpart in the CSF and %d have: this may be another"
                + " person's serum; check names and dates of both samples",
            answer.serumOnly(),
            answer.shared()));
  }

  /** The pattern from the counts, as a laboratory would name it; a ladder wins. */
  private BandPattern pattern(PairAnswer bands) {
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
}
