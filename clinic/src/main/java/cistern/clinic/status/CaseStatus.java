package cistern.clinic.status;

import cistern.bands.BandReport;
import cistern.clinic.form.CaseStep;
import cistern.clinic.setting.Setting;
import cistern.finding.Printed;
import cistern.finding.Problem;
import cistern.interpretation.Workup;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.panel.CsfMissing;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.SerumMissing;
import cistern.puncture.PuncturePlan;
import cistern.puncture.specimen.Outstanding;
import cistern.urgent.Tier;
import cistern.urgent.Urgency;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;

/** Where one case stands: what is done of each step, what is missing, and what waits. */
public final class CaseStatus {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.UK);

  private final OpenCase open;
  private final Medicine medicine;
  private final OptionalLong signedVersion;
  private final PuncturePlan plan;

  private CaseStatus(OpenCase open, Medicine medicine, OptionalLong signedVersion) {
    this.open = open;
    this.medicine = medicine;
    this.signedVersion = signedVersion;
    this.plan = open.plan();
  }

  /**
   * The status of a case.
   *
   * @param signedVersion the version that was signed last, if one was
   */
  public static CaseStatus of(OpenCase open, Medicine medicine, OptionalLong signedVersion) {
    return new CaseStatus(open, medicine, signedVersion);
  }

  /** The plan for its puncture. */
  public PuncturePlan plan() {
    return plan;
  }

  /** What is done of a step, in words. */
  public String words(CaseStep step) {
    return switch (step) {
      case QUESTION -> question();
      case PLAN -> planned();
      case DRAW -> drawn();
      case RESULTS -> results();
      case BANDS -> bands();
      case AFTER -> after();
    };
  }

  private Workup workup() {
    return open.workup();
  }

  private Panel panel() {
    return workup().panel();
  }

  private String question() {
    boolean isStated = workup().clinical().isEvidenceStated();
    String asked = workup().remarks().question().isPresent() ? "asked" : "no question yet";
    return asked + (isStated ? ", evidence stated" : ", no evidence stated");
  }

  private String planned() {
    return plannedAt().map(at -> "planned for " + time(at)).orElse("no time planned");
  }

  private Optional<OffsetDateTime> plannedAt() {
    return workup().procedure().before().times().plannedAt();
  }

  private String time(OffsetDateTime at) {
    return TIME.format(at.atZoneSameInstant(medicine.zone()));
  }

  private String drawn() {
    Draw csf = panel().csf();
    if (csf.at().isEmpty()) {
      return "not drawn yet";
    }
    String serum =
        panel().serum().at().isPresent()
            ? "serum " + apart(csf.at().get(), panel().serum().at().get())
            : "no time of the serum";
    return "drawn " + time(csf.at().get()) + ", " + serum;
  }

  private static String apart(OffsetDateTime csf, OffsetDateTime serum) {
    Duration apart = Duration.between(csf, serum);
    if (apart.isZero()) {
      return "at the same time";
    }
    long minutes = apart.abs().toMinutes();
    double hours = minutes / (double) Duration.ofHours(1).toMinutes();
    String size =
        minutes < Duration.ofHours(1).toMinutes()
            ? minutes + " min"
            : Printed.decimals(hours, 1) + " h";
    return size + (apart.isNegative() ? " earlier" : " later");
  }

  private String results() {
    int count = panel().results().size();
    return count == 0 ? "none yet" : count + (count == 1 ? " result" : " results");
  }

  private String bands() {
    var reading = open.interpretation().bands();
    if (!reading.isReported()) {
      return "not reported";
    }
    return reading.verdict().word() + (reading.isConfirmed() ? "" : ", to be confirmed");
  }

  /** What is done of the picture of the gel, in words. */
  public String gel() {
    return switch (open.interpretation().bands().report()) {
      case BandReport.ReadFromGel read ->
          read.confirmedBy().map(name -> "confirmed by " + name).orElse("to be confirmed");
      case BandReport.Counted counted ->
          counted.gel().isPresent() ? "a person's counts stand" : "no picture";
      case BandReport.GelNamed named -> "the picture is not here";
      case BandReport.NotReported none -> "no picture";
      case BandReport.Patterned patterned -> "no picture";
      case BandReport.Concluded concluded -> "no picture";
    };
  }

  private String after() {
    return switch (headache()) {
      case YES -> "a headache";
      case NO -> "no headache";
      case UNKNOWN -> isCallDue() ? "call due" : "not asked yet";
    };
  }

  private Answer headache() {
    return workup().procedure().after().headache().map(h -> h.present()).orElse(Answer.UNKNOWN);
  }

  private boolean isCallDue() {
    return headache() == Answer.UNKNOWN
        && panel().csf().at().filter(this::isTimeToCall).isPresent();
  }

  private boolean isTimeToCall(OffsetDateTime drawn) {
    OffsetDateTime now = medicine.now();
    return !drawn.plusHours(Setting.CALL_HOURS.number()).isAfter(now)
        && now.isBefore(drawn.plusDays(Setting.CALL_DAYS.number()));
  }

  /** What is done about signing. */
  enum Signing {
    NOT_SIGNED("not signed"),
    SIGNED("signed"),
    CHANGED_SINCE("signed; changed since");

    private final String words;

    Signing(String words) {
      this.words = words;
    }
  }

  /** What is done about signing, in words. */
  public String signing() {
    return signed().words;
  }

  private Signing signed() {
    if (signedVersion.isEmpty()) {
      return Signing.NOT_SIGNED;
    }
    return signedVersion.getAsLong() == open.version().number()
        ? Signing.SIGNED
        : Signing.CHANGED_SINCE;
  }

  /** What somebody must act on and nobody has closed by name, the gravest first. */
  public List<Urgency> emergencies() {
    return open.interpretation().alerts().urgent().holding().stream()
        .filter(u -> u.answered().isEmpty() && u.tier() != Tier.T2)
        .toList();
  }

  /** What had to be acted on and somebody has closed by name, the gravest first. */
  public List<Urgency> closed() {
    return open.interpretation().alerts().urgent().holding().stream()
        .filter(u -> u.answered().isPresent())
        .toList();
  }

  /** Everything that is open when it is signed as it stands, in sentences, the gravest first. */
  public List<String> open() {
    return Stream.concat(emergencies().stream().map(u -> u.words().say()), incomplete().stream())
        .toList();
  }

  /** What is missing, not confirmed or still awaited, in sentences. */
  public List<String> incomplete() {
    List<String> all = new ArrayList<>();
    if (panel().results().isEmpty()) {
      all.add("No result: there is nothing to interpret.");
    }
    all.addAll(missing());
    GelDispute.of(open.interpretation().bands()).map(GelDispute::text).ifPresent(all::add);
    if (isGelOpen()) {
      all.add("The bands are not confirmed: the criteria see them as unknown.");
    }
    plan.afterwards().outstanding().stream()
        .filter(CaseStatus::isAwaited)
        .map(o -> "Still awaited: " + o.test().term() + ".")
        .forEach(all::add);
    return all;
  }

  private static boolean isAwaited(Outstanding test) {
    return test.state() == Outstanding.State.OUTSTANDING
        || test.state() == Outstanding.State.OVERDUE;
  }

  private boolean isGelOpen() {
    var bands = open.interpretation().bands();
    return bands.isReported() && (!bands.isConfirmed() || GelDispute.of(bands).isPresent());
  }

  /** What is missing, in sentences. */
  public List<String> missing() {
    List<String> missing = new ArrayList<>();
    if (panel().person().ageYears().isEmpty()) {
      missing.add("The age: without it the limits that depend on age cannot be given.");
    }
    if (workup().remarks().question().isEmpty()) {
      missing.add("The question.");
    }
    if (panel().csf().at().isPresent() && panel().serum().at().isEmpty()) {
      missing.add("The time of the serum: whether the pair may be compared is unknown.");
    }
    open.interpretation().problems().stream()
        .filter(p -> isOfOneFluid(p))
        .map(Problem::text)
        .forEach(missing::add);
    if (!panel().results().isEmpty() && !open.interpretation().bands().isReported()) {
      missing.add("The bands.");
    }
    return missing;
  }

  private static boolean isOfOneFluid(Problem problem) {
    return problem instanceof SerumMissing || problem instanceof CsfMissing;
  }

  /**
   * What waits to be done; a case with an overdue result waits for that, not for the others too.
   */
  public Set<Duty> duties() {
    Set<Duty> duties = EnumSet.noneOf(Duty.class);
    add(duties, Duty.EMERGENCY, !emergencies().isEmpty());
    boolean isDrawn = panel().csf().at().isPresent();
    boolean hasResults = !panel().results().isEmpty();
    add(duties, Duty.SERUM, isSerumMissing());
    boolean isOverdue = isSent(Outstanding.State.OVERDUE);
    boolean isDue = (isDrawn && !hasResults) || isSent(Outstanding.State.OUTSTANDING);
    add(duties, Duty.OVERDUE, isOverdue);
    add(duties, Duty.DUE, isDue && !isOverdue);
    add(duties, Duty.GEL, isGelOpen());
    add(duties, Duty.SIGN, hasResults && duties.isEmpty() && signed() != Signing.SIGNED);
    add(duties, Duty.PUNCTURE, !isDrawn && plannedAt().isPresent());
    add(duties, Duty.HEADACHE_CALL, isCallDue());
    return duties;
  }

  private static void add(Set<Duty> duties, Duty duty, boolean isWaiting) {
    if (isWaiting) {
      duties.add(duty);
    }
  }

  private boolean isSerumMissing() {
    boolean isAnySerum =
        panel().serum().at().isPresent()
            || panel().results().keySet().stream().anyMatch(s -> s.in() == Compartment.SERUM);
    boolean isOne =
        open.interpretation().problems().stream().anyMatch(SerumMissing.class::isInstance);
    return isOne || (panel().csf().at().isPresent() && !isAnySerum);
  }

  /** When a time has come that changes what is said here, if one will. */
  Optional<OffsetDateTime> renewAt() {
    OffsetDateTime now = medicine.now();
    Stream<OffsetDateTime> calls =
        panel().csf().at().stream()
            .filter(at -> headache() == Answer.UNKNOWN)
            .flatMap(
                at ->
                    Stream.of(
                        at.plusHours(Setting.CALL_HOURS.number()),
                        at.plusDays(Setting.CALL_DAYS.number())));
    Stream<OffsetDateTime> due =
        plan.afterwards().outstanding().stream().flatMap(o -> o.dueAt().stream());
    return Stream.concat(calls, due)
        .filter(at -> at.isAfter(now))
        .min(OffsetDateTime.timeLineOrder());
  }

  private boolean isSent(Outstanding.State state) {
    return plan.afterwards().outstanding().stream().anyMatch(o -> o.state() == state);
  }
}
