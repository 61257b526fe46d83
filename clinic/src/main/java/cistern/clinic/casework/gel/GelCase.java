package cistern.clinic.casework.gel;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReport.GelNamed;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.gel.Gels;
import cistern.clinic.gel.KeptReading;
import cistern.clinic.status.OpenCase;
import cistern.exchange.json.Json;
import cistern.exchange.workup.WorkupReading;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.KeptBands;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.PairReading;
import java.util.List;
import java.util.Optional;

/**
 * A case of which the gel was read here.
 *
 * @param open the case as it stands
 * @param named what the work-up says of the gel
 * @param kept the reading that it names
 * @param reading the same, in its own form
 * @param placings of the lanes that were not saved; the reading is of the last that was done
 */
record GelCase(
    OpenCase open, GelNamed named, KeptReading kept, GelReading reading, Placings placings) {

  /** What a work-up says of a gel, whether its picture is here or not. */
  static Optional<GelNamed> named(OpenCase open, CaseContext context) {
    return context.medicine().read(open.version().workup()) instanceof WorkupReading.Understood u
            && u.workup().bands() instanceof GelNamed named
        ? Optional.of(named)
        : Optional.empty();
  }

  static Optional<GelCase> of(OpenCase open, CaseContext context) {
    return named(open, context)
        .flatMap(
            named ->
                context
                    .gels()
                    .find(named)
                    .map(
                        kept ->
                            new GelCase(
                                open,
                                named,
                                kept,
                                Gels.read(kept, context.medicine().facts()),
                                Placings.NONE)));
  }

  /** The same gel with its lanes as they were placed; nothing where it was not read so. */
  Optional<GelCase> with(Placings all, CaseContext context) {
    if (all.done().isEmpty()) {
      return Optional.of(new GelCase(open, named, kept, reading, all));
    }
    Placement last = all.done().getLast();
    GelNamed other =
        new GelNamed(named.file(), named.lanes(), last.pair(), Optional.empty(), Optional.empty());
    return context
        .gels()
        .find(named.file(), last.plan())
        .map(
            read ->
                new GelCase(open, other, read, Gels.read(read, context.medicine().facts()), all));
  }

  /** Whether the reading is that of the case, and not of lanes placed otherwise since. */
  boolean isSaved() {
    return placings.done().isEmpty();
  }

  /** Whether a person gave the lanes' places. */
  boolean isPlaced() {
    return reading.lanes().stream().anyMatch(LaneReading::isPlaced);
  }

  String path() {
    return "/cases/" + open.version().caseId() + "/gel";
  }

  /** This person's pair, when the reading holds it. */
  Optional<PairReading> pair() {
    return reading.pairs().stream().filter(p -> p.pair() == named.pair()).findFirst();
  }

  /** Whether the program gives a pattern: nothing that it found forbids it. */
  boolean isPatterned() {
    return pair().flatMap(PairReading::pattern).isPresent();
  }

  boolean isReadAsLadder() {
    return pair().flatMap(PairReading::pattern).filter(BandPattern.LADDER::equals).isPresent();
  }

  /** What the case holds of a person's edit. */
  GelEdit edit() {
    return isSaved() ? GelEdit.of(bands(), isReadAsLadder()) : GelEdit.none(isReadAsLadder());
  }

  /**
   * The added bands of the case where they lie with the lanes as they were placed since, one
   * placing after the other. Where a lane of the pair was not found nothing is carried over.
   */
  List<AddedBand> savedAdded(CaseContext context) {
    GelCase at = isSaved() ? this : of(open, context).orElseThrow();
    GelEdit edit = at.edit();
    for (int steps = 1; steps <= placings.done().size() && !edit.added().isEmpty(); steps++) {
      GelCase next =
          at.with(new Placings(placings.done().subList(0, steps), List.of()), context).orElse(at);
      if (next.bandsKept(GelEdit.none(false)).isPresent()) {
        edit = CarriedEdit.of(at, edit, next);
        at = next;
      }
    }
    return edit.added();
  }

  Json.Structure bands() {
    return BandsMember.of(open.file());
  }

  /** The pair with an edit, when both of its lanes were found. */
  Optional<EditedPair> bandsKept(GelEdit edit) {
    return KeptBands.of(reading, named.pair(), edit.struck())
        .map(read -> EditedPair.of(read, edit.added()));
  }

  /** The counts as the program read them. */
  Optional<BandCounts> countsRead() {
    return pair()
        .flatMap(PairReading::counts)
        .map(c -> BandCounts.of(c.csfOnly(), c.shared(), c.serumOnly()));
  }

  /** Whether an edit amounts to what was read. */
  boolean isAsRead(GelEdit edit) {
    return edit.isLadder() == isReadAsLadder()
        && bandsKept(edit).map(b -> b.bands().counts()).equals(countsRead());
  }
}
