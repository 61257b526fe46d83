package cistern.clinic.status;

import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.HoldVerdict;
import cistern.puncture.specimen.Outstanding;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One thing that waits in a case.
 *
 * @param duty what
 * @param dueAt since or until when, ISO 8601 in UTC; empty when no time belongs to it
 * @param words what there is to know of it, on one line
 */
public record Waiting(Duty duty, String dueAt, String words) {

  /** A duty of a case with its time and words. */
  public static Waiting of(Duty duty, OpenCase open, CaseStatus status) {
    return new Waiting(
        duty,
        at(duty, open).map(Waiting::utc).orElse(""),
        words(duty, open, status).replaceAll("\\s+", " "));
  }

  private static String utc(OffsetDateTime at) {
    return at.withOffsetSameInstant(ZoneOffset.UTC).toInstant().toString();
  }

  private static Optional<OffsetDateTime> at(Duty duty, OpenCase open) {
    Optional<OffsetDateTime> drawn = open.workup().panel().csf().at();
    return switch (duty) {
      case PUNCTURE -> open.workup().procedure().before().times().plannedAt();
      case DUE -> due(open, Outstanding.State.OUTSTANDING).or(() -> drawn);
      case OVERDUE -> due(open, Outstanding.State.OVERDUE).or(() -> drawn);
      case EMERGENCY, HEADACHE_CALL, SERUM, GEL, SIGN -> drawn;
    };
  }

  private static Optional<OffsetDateTime> due(OpenCase open, Outstanding.State state) {
    return open.plan().afterwards().outstanding().stream()
        .filter(o -> o.state() == state)
        .flatMap(o -> o.dueAt().stream())
        .min(Comparator.naturalOrder());
  }

  private static String words(Duty duty, OpenCase open, CaseStatus status) {
    return switch (duty) {
      case EMERGENCY ->
          status.emergencies().stream().map(u -> u.words().say()).findFirst().orElse("");
      case HEADACHE_CALL -> "no call noted since the puncture";
      case PUNCTURE -> verdict(open.plan());
      case SERUM -> "no serum of the same puncture";
      case DUE -> tests(open, Outstanding.State.OUTSTANDING);
      case OVERDUE -> tests(open, Outstanding.State.OVERDUE);
      case GEL ->
          GelDispute.of(open.interpretation().bands()).map(GelDispute::text).orElseGet(status::gel);
      case SIGN -> status.signing();
    };
  }

  private static String tests(OpenCase open, Outstanding.State state) {
    return open.plan().afterwards().outstanding().stream()
        .filter(o -> o.state() == state)
        .map(o -> o.test().term())
        .distinct()
        .collect(Collectors.joining(", "));
  }

  /** Whether to go on to a puncture, and how many intervals of each drug are over. */
  private static String verdict(PuncturePlan plan) {
    String drugs =
        plan.bleeding().antithrombotics().stream()
            .map(Waiting::intervals)
            .collect(Collectors.joining("; "));
    String go = plan.decision().verdict().go().text();
    return drugs.isEmpty() ? go : go + ": " + drugs;
  }

  private static String intervals(AntithromboticPlan drug) {
    long read = drug.answers().stream().filter(a -> a.isRead()).count();
    long over =
        drug.answers().stream()
            .filter(a -> a.isRead() && a.verdict() == HoldVerdict.PASSED)
            .count();
    return drug.taken().name()
        + ": "
        + over
        + " of "
        + read
        + (read == 1 ? " interval" : " intervals")
        + " over at the planned time";
  }
}
