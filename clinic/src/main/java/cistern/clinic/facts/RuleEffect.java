package cistern.clinic.facts;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.Identity;
import cistern.clinic.status.Medicine;
import cistern.clinic.status.OpenCase;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.status.UnreadableCase;
import cistern.clinic.status.VerdictChange;
import cistern.clinic.status.VerdictChange.Under;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What other rules would alter in one case.
 *
 * @param caseId which
 * @param name chosen by people
 * @param person whose it is
 * @param standing whether it is open or signed
 * @param changes what it would say otherwise
 */
record RuleEffect(
    String caseId, String name, String person, String standing, List<VerdictChange> changes) {

  RuleEffect {
    changes = List.copyOf(changes);
  }

  /** Whether a verdict changes. */
  boolean isVerdict() {
    return changes.stream().anyMatch(VerdictChange::isVerdict);
  }

  /**
   * What some rules would alter in as many cases as are looked at together, the last changed first.
   *
   * @param after how many cases were looked at before
   */
  static List<RuleEffect> of(CaseContext context, RulesInForce trial, long after) {
    Instant at = context.medicine().clock().instant();
    Medicine now = context.medicine().under(context.medicine().rules(), at);
    Medicine then = context.medicine().under(trial, at);
    return context.cases().lastChanged(after, Setting.RULE_CASES.number()).parallelStream()
        .flatMap(version -> of(context, version, now, then).stream())
        .toList();
  }

  private static Optional<RuleEffect> of(
      CaseContext context, CaseVersion version, Medicine now, Medicine then) {
    Optional<OpenCase> before = opened(version, now);
    if (before.isEmpty()) {
      return Optional.empty();
    }
    OpenCase open = before.get();
    List<VerdictChange> changes =
        opened(version, then)
            .map(
                after ->
                    VerdictChange.between(
                        new Under(open, now.facts()), new Under(after, then.facts())))
            .orElseGet(
                () ->
                    List.of(
                        new VerdictChange("The whole case", "is read", "cannot be read", true)));
    return changes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new RuleEffect(
                version.caseId(),
                open.name(),
                Identity.of(open.file()).toText(),
                standing(version, context.reports().signedVersion(version.caseId())),
                changes));
  }

  private static Optional<OpenCase> opened(CaseVersion version, Medicine medicine) {
    try {
      return Optional.of(OpenCase.of(version, medicine));
    } catch (UnreadableCase e) {
      return Optional.empty();
    }
  }

  private static String standing(CaseVersion version, OptionalLong signed) {
    if (signed.isEmpty()) {
      return "open";
    }
    return signed.getAsLong() == version.number()
        ? "signed under the old rule"
        : "open; version " + signed.getAsLong() + " is signed under the old rule";
  }
}
