package cistern.clinic.figures;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.status.Medicine;
import cistern.cohort.CohortMember;
import cistern.cohort.CohortSummary;
import cistern.cohort.SitePeople;
import cistern.cohort.SiteStudy;
import cistern.exchange.workup.RecordedReader;
import cistern.exchange.workup.WorkupReading;
import cistern.interpretation.Workup;
import cistern.measurement.Compartment;
import cistern.report.cohort.CohortFolder;
import cistern.report.cohort.CohortReport;
import cistern.report.cohort.CohortRows;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Counts cases one by one into the report of a cohort. */
final class Counting {

  /** The cut-off's samples are drawn alike in every run. */
  private static final long SEED = 1;

  private final Medicine medicine;
  private final Choice choice;
  private final CohortFolder folder;
  private final RecordedReader recorded;
  private final SitePeople people;
  private final SortedMap<String, Long> diagnoses = new TreeMap<>();
  private CohortSummary summary = CohortSummary.NONE;
  private boolean isInvented;
  private long left;
  private int unreadable;

  Counting(Medicine medicine, Choice choice, CohortFolder folder) {
    this.medicine = medicine;
    this.choice = choice;
    this.folder = folder;
    this.recorded = RecordedReader.of(medicine.facts());
    this.people = SiteStudy.people(choice.controls(), choice.cases());
  }

  /** Counts some cases. */
  void add(List<CaseVersion> cases) throws IOException {
    CohortSummary part = CohortSummary.NONE;
    for (CaseVersion version : cases) {
      Optional<CohortMember> member = member(version);
      if (member.isPresent()) {
        folder.accept(CohortRows.row(member.get()));
        people.add(member.get());
        member.get().diagnosis().ifPresent(d -> diagnoses.merge(d, 1L, Long::sum));
        part = part.merge(CohortSummary.of(member.get()));
      }
    }
    summary = summary.merge(part);
  }

  private Optional<CohortMember> member(CaseVersion version) {
    try {
      return switch (medicine.read(version.workup())) {
        case WorkupReading.Understood read -> member(read);
        case WorkupReading.NotValid notValid -> rejected();
      };
    } catch (RuntimeException | StackOverflowError fault) {
      // A fault in one case stays in it: its own screen tells of it.
      return rejected();
    }
  }

  private Optional<CohortMember> rejected() {
    unreadable++;
    return Optional.empty();
  }

  private Optional<CohortMember> member(WorkupReading.Understood read) {
    CohortMember member =
        CohortMember.of(
            medicine.judge(read.workup()), recorded.read(read.document()), medicine.facts());
    if (!isPunctured(read.workup()) || !choice.holds(member.month())) {
      left++;
      return Optional.empty();
    }
    isInvented |= read.workup().remarks().isInvented();
    return Optional.of(member);
  }

  /** Whether fluid was drawn: its time is known, or something was measured in it. */
  private static boolean isPunctured(Workup workup) {
    return workup.panel().csf().at().isPresent()
        || workup.panel().results().keySet().stream().anyMatch(s -> s.in() == Compartment.CSF);
  }

  Standing.Seen seen() {
    return new Standing.Seen(summary.people(), left, unreadable);
  }

  SortedMap<String, Long> diagnoses() {
    return diagnoses;
  }

  CohortReport report() {
    return new CohortReport(
        new CohortReport.Made(
            medicine.software(), medicine.facts().version(), medicine.facts().policy()),
        new CohortReport.Groups(
            choice.controls(), choice.cases(), Optional.empty(), Optional.empty()),
        isInvented,
        summary,
        unreadable,
        CohortReport.Site.of(new SiteStudy(medicine.facts(), people, SEED)),
        false,
        List.of());
  }
}
