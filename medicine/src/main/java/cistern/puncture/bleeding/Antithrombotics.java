package cistern.puncture.bleeding;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.puncture.guideline.Guideline;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.DoseClass;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Every guideline's interval for every antithrombotic in use. A guideline whose answer depends on
 * something unknown asks; nothing is averaged and nothing tells anybody to change a medicine.
 */
public final class Antithrombotics {

  private static final String GUIDELINE = "guideline.";
  private static final String ALWAYS = ".shown";

  private final Facts facts;
  private final List<HoldRule> rules;
  private final List<String> guidelines;

  private Antithrombotics(Facts facts) {
    this.facts = facts;
    rules = HoldRule.all(facts);
    guidelines =
        facts.keys(GUIDELINE).stream()
            .filter(key -> key.endsWith(ALWAYS))
            .map(key -> key.substring(GUIDELINE.length(), key.length() - ALWAYS.length()))
            .toList();
  }

  /** The rules under some facts. */
  public static Antithrombotics of(Facts facts) {
    return facts.once(Antithrombotics.class, Antithrombotics::new);
  }

  /** Every antithrombotic in use against every guideline. */
  public List<AntithromboticPlan> check(TakenDrugs drugs, Before before, Clearance clearance) {
    return drugs.antithrombotics().stream().map(t -> check(t, before, clearance)).toList();
  }

  private AntithromboticPlan check(TakenDrugs.Taken drug, Before before, Clearance clearance) {
    Circumstances circumstances = new Circumstances(drug.taken(), before, clearance);
    List<GuidelineAnswer> answers = new ArrayList<>();
    for (String guideline : guidelines) {
      List<HoldRule> rows = rows(guideline, drug.drug().intervals());
      if (!rows.isEmpty() || facts.word(GUIDELINE + guideline + ALWAYS).equals("always")) {
        answers.add(answer(Guideline.of(facts, guideline), rows, circumstances));
      }
    }
    Set<HoldVerdict> verdicts =
        answers.stream()
            .map(GuidelineAnswer::verdict)
            .filter(r -> r != HoldVerdict.ASK)
            .collect(Collectors.toSet());
    OptionalDouble hours = circumstances.hours();
    return new AntithromboticPlan(
        drug.taken(),
        hours.isPresent() && hours.getAsDouble() >= 0 ? hours : OptionalDouble.empty(),
        answers,
        verdicts.size() > 1);
  }

  private List<HoldRule> rows(String guideline, Optional<String> drug) {
    return drug.map(
            code ->
                rules.stream()
                    .filter(r -> r.guideline().equals(guideline) && r.drug().equals(code))
                    .toList())
        .orElse(List.of());
  }

  private GuidelineAnswer answer(
      Guideline guideline, List<HoldRule> rows, Circumstances circumstances) {
    if (rows.isEmpty()) {
      return ask(guideline, "no interval for this drug was read: ask the prescriber");
    }
    Clearance clearance = circumstances.clearance();
    DoseClass dose = circumstances.taken().doseClass();
    List<HoldRule> forDose = rows.stream().filter(r -> r.isFor(dose)).toList();
    List<HoldRule> fitting = forDose.stream().filter(r -> r.isFor(clearance)).toList();
    if (forDose.isEmpty()) {
      return ask(guideline, "no interval for this dose class was read: ask the prescriber");
    }
    if (fitting.isEmpty()) {
      return ask(
          guideline, "its part for this creatinine clearance was not read: ask the prescriber");
    }
    boolean isReached =
        !clearance.isKnown()
            || fitting.stream().anyMatch(r -> r.band().contains(clearance.value().getAsDouble()));
    if (!isReached) {
      return ask(
          guideline,
          "its part for this creatinine clearance was not read; the row beside it: "
              + String.join("; ", descriptions(fitting))
              + "; ask the prescriber");
    }
    return answer(guideline, fitting, circumstances, unknowns(forDose, circumstances));
  }

  /** What the rows depend on and nobody has said. */
  private static List<String> unknowns(List<HoldRule> rows, Circumstances circumstances) {
    List<String> unknown = new ArrayList<>();
    boolean isByDose = rows.stream().map(HoldRule::dose).distinct().count() > 1;
    if (circumstances.taken().doseClass() == DoseClass.UNKNOWN
        && (isByDose || rows.stream().noneMatch(r -> r.dose().equals("any")))) {
      unknown.add("the dose class (low or high)");
    }
    if (!circumstances.clearance().isKnown() && rows.stream().anyMatch(r -> !r.band().isEvery())) {
      unknown.add("the creatinine clearance");
    }
    return unknown;
  }

  private GuidelineAnswer answer(
      Guideline guideline, List<HoldRule> rows, Circumstances circumstances, List<String> unknown) {
    List<HoldCheck> checks = rows.stream().map(r -> HoldCheck.of(r, circumstances)).toList();
    boolean isBetween = unknown.isEmpty() && rows.size() > 1;
    HoldCheck check =
        isBetween
            ? between(rows, checks, circumstances.clearance())
            : unknown.isEmpty() ? checks.getFirst() : open(rows, checks, unknown);
    return new GuidelineAnswer(
        guideline,
        together(rows.stream().map(r -> hours(r.hold())).toList()),
        together(rows.stream().map(HoldRule::restart).toList()),
        together(rows.stream().map(HoldRule::restartTraumatic).toList()),
        rows.stream()
            .flatMap(r -> r.conditions().stream())
            .map(Condition::toText)
            .distinct()
            .toList(),
        rows.size() > 1 ? descriptions(rows) : List.of(),
        rows.stream().anyMatch(HoldRule::isRead),
        check.verdict(),
        check.reason(),
        grounds(rows));
  }

  /** Of what was read where anything was, so that a number does not look recalled. */
  private static Grounds grounds(List<HoldRule> rows) {
    List<HoldRule> read = rows.stream().filter(HoldRule::isRead).toList();
    return (read.isEmpty() ? rows : read)
        .stream().map(HoldRule::grounds).reduce(Grounds::and).orElseThrow();
  }

  /** Two rows beside a threshold that the clearance nearly reaches: both are shown. */
  private static HoldCheck between(
      List<HoldRule> rows, List<HoldCheck> checks, Clearance clearance) {
    List<String> read = descriptions(rows);
    String both =
        "the clearance ("
            + clearance.toText()
            + (read.size() > 1
                ? ") is near a threshold, so both rows are shown: " + String.join("; ", read)
                : ") is near a threshold; "
                    + String.join("", read)
                    + "; the row beside it was not read");
    HoldVerdict first = checks.getFirst().verdict();
    boolean isOne = checks.stream().allMatch(c -> c.verdict() == first);
    return new HoldCheck(
        isOne ? first : HoldVerdict.ASK, isOne ? both : both + "; ask the prescriber");
  }

  /**
   * What can be said without the missing facts: only that the interval is not passed, and only when
   * it is so in every case.
   */
  private static HoldCheck open(List<HoldRule> rows, List<HoldCheck> checks, List<String> unknown) {
    boolean isCovered =
        rows.stream().anyMatch(r -> r.band().contains(0))
            && rows.stream().anyMatch(r -> r.band().contains(Double.MAX_VALUE));
    String missing = String.join(" and ", unknown) + " is not known";
    if (isCovered && checks.stream().allMatch(c -> c.verdict() == HoldVerdict.NOT_PASSED)) {
      return new HoldCheck(
          HoldVerdict.NOT_PASSED,
          checks.getFirst().reason() + ", whatever " + String.join(" and ", unknown));
    }
    String each = String.join("; ", descriptions(rows));
    return new HoldCheck(
        HoldVerdict.ASK,
        missing + (each.isEmpty() ? "" : " (" + each + ")") + "; ask the prescriber");
  }

  private static List<String> descriptions(List<HoldRule> rows) {
    return rows.stream()
        .map(Antithrombotics::describe)
        .filter(text -> !text.isEmpty())
        .distinct()
        .toList();
  }

  private static String describe(HoldRule rule) {
    Optional<Hours> hours = hours(rule.hold());
    String dose = rule.dose().equals("any") ? "" : rule.dose() + " dose";
    String where =
        String.join(
            ", ", List.of(dose, rule.band().toText()).stream().filter(t -> !t.isEmpty()).toList());
    return hours.map(h -> where.isEmpty() ? h.toText() : where + ": " + h.toText()).orElse("");
  }

  private static Optional<Hours> hours(Hold hold) {
    return switch (hold) {
      case Hold.Wait wait -> Optional.of(wait.hours());
      case Hold.MoreThan more -> Optional.of(new Hours(more.hours(), more.hours()));
      case Hold.NoInterval none -> Optional.of(new Hours(0, 0));
      case Hold.Avoid avoid -> Optional.empty();
      case Hold.UntilLevel level -> Optional.empty();
      case Hold.RestartOnly restart -> Optional.empty();
      case Hold.NotRead notRead -> Optional.empty();
    };
  }

  private static Optional<Hours> together(List<Optional<Hours>> all) {
    return all.stream().flatMap(Optional::stream).reduce(Hours::and);
  }

  private GuidelineAnswer ask(Guideline guideline, String reason) {
    return new GuidelineAnswer(
        guideline,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        List.of(),
        false,
        HoldVerdict.ASK,
        reason,
        facts.grounds("guideline.unread"));
  }
}
