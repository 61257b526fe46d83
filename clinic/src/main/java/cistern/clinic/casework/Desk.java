package cistern.clinic.casework;

import cistern.clinic.account.Accounts;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases;
import cistern.clinic.cases.Drafts;
import cistern.clinic.cases.Reports;
import cistern.clinic.gel.Gels;
import cistern.clinic.standing.Medicine;
import cistern.clinic.standing.OpenCase;
import cistern.clinic.standing.RecentCases;
import cistern.clinic.standing.Standing;
import cistern.clinic.standing.Summaries;
import cistern.clinic.standing.UnreadableCase;
import cistern.clinic.web.Frame;
import cistern.clinic.web.ShownInstead;
import cistern.clinic.web.Troubles;
import cistern.clinic.web.Visit;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;

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
 */
public record Desk(
    Frame frame,
    Troubles troubles,
    Accounts accounts,
    Cases cases,
    Reports reports,
    Drafts drafts,
    Gels gels,
    Medicine medicine,
    RecentCases recent,
    Summaries summaries) {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm:ss", Locale.UK);

  /** The case that a visit names, as it stands; the trail names the reader. */
  public Optional<OpenCase> open(Visit visit) {
    return cases.read(visit.path("id"), visit.account().id()).map(v -> open(visit, v));
  }

  private OpenCase open(Visit visit, CaseVersion version) {
    try {
      return recent.open(version);
    } catch (UnreadableCase e) {
      throw new ShownInstead(UnreadableScreen.instead(this, visit, e));
    }
  }

  /** Where a case stands. */
  public Standing standing(OpenCase open) {
    Long signed = reports.signedVersions().get(open.version().caseId());
    return Standing.of(
        open, medicine, signed == null ? OptionalLong.empty() : OptionalLong.of(signed));
  }

  /** A time of the store as people read it, in the clinic's time. */
  public String time(String at) {
    return TIME.format(Instant.parse(at).atZone(medicine.zone()));
  }
}
