package cistern.clinic.casework;

import cistern.clinic.account.Accounts;
import cistern.clinic.cases.Cases;
import cistern.clinic.cases.Drafts;
import cistern.clinic.cases.Reports;
import cistern.clinic.gel.Gels;
import cistern.clinic.status.CaseNames;
import cistern.clinic.status.CaseStatus;
import cistern.clinic.status.LaboratoryUnits;
import cistern.clinic.status.Medicine;
import cistern.clinic.status.OpenCase;
import cistern.clinic.status.RecentCases;
import cistern.clinic.status.Summaries;
import cistern.clinic.web.ErrorPages;
import cistern.clinic.web.Frame;
import cistern.clinic.web.PageRequest;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/**
 * What the screens of cases work with.
 *
 * @param frame of a page
 * @param troubles pages for what is not there
 * @param accounts names of people
 * @param cases every version
 * @param reports every signed report
 * @param drafts what is typed and not saved
 * @param gels every picture of a gel and what was read in it
 * @param medicine what a case says
 * @param recent what the cases said that were opened last
 * @param summaries what lists show of every case
 * @param units that each laboratory used last
 */
public record CaseContext(
    Frame frame,
    ErrorPages troubles,
    Accounts accounts,
    Cases cases,
    Reports reports,
    Drafts drafts,
    Gels gels,
    Medicine medicine,
    RecentCases recent,
    Summaries summaries,
    LaboratoryUnits units) {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm:ss", Locale.UK);

  private static final DateTimeFormatter LONG =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.UK);
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);
  private static final DateTimeFormatter SHORT =
      DateTimeFormatter.ofPattern("EEE d MMM, HH:mm", Locale.UK);

  /**
   * The case that a visit names, as it stands; the trail names the reader.
   *
   * @throws cistern.clinic.status.UnreadableCase when it cannot be read
   */
  public Optional<OpenCase> open(PageRequest visit) {
    return cases.read(visit.path("id"), visit.account().id()).map(recent::open);
  }

  /** Names that no case bears yet. */
  public CaseNames names() {
    return CaseNames.of(summaries);
  }

  /** Where a case stands. */
  public CaseStatus status(OpenCase open) {
    return CaseStatus.of(open, medicine, reports.signedVersion(open.version().caseId()));
  }

  /** A time of the store as people read it, in the clinic's time. */
  public String time(String at) {
    return TIME.format(Instant.parse(at).atZone(medicine.zone()));
  }

  /**
   * A time of the store without seconds, and without the year when it is this one, where it stands
   * in a narrow column.
   */
  public String shortTime(String at) {
    ZonedDateTime local = Instant.parse(at).atZone(medicine.zone());
    boolean isThisYear = local.getYear() == medicine.now().getYear();
    return (isThisYear ? SHORT : LONG).format(local);
  }

  /** The day of a time of a file, in the clinic's time. */
  String day(OffsetDateTime at) {
    return DAY.format(at.atZoneSameInstant(medicine.zone()));
  }

  /** A time of a file as people read it, in the clinic's time. */
  public String time(OffsetDateTime at) {
    return TIME.format(at.atZoneSameInstant(medicine.zone()));
  }
}
