package cistern.puncture.bleeding;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.puncture.guideline.Voice;
import cistern.puncture.procedure.Antithrombotic;
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

  private static final List<String> VOICES =
      List.of(
          "abn-2018",
          "abn-summary",
          "esaic-esra-2022",
          "asra-2003",
          "asra-2018",
          "asra-2025",
          "clinical-reference",
          "german-s1-2020",
          "uk-regional",
          "uk-perioperative",
          "medical-handbook",
          "us-label",
          "local");

  /** The guidelines that are shown even when they have no row, so that nobody looks in vain. */
  private static final Set<String> ALWAYS = Set.of("abn-2018", "esaic-esra-2022", "asra-2025");

  private final Facts facts;
  private final List<HoldRule> rules;

  private Antithrombotics(Facts facts) {
    this.facts = facts;
    rules = HoldRule.all(facts);
  }

  /** The rules under some facts. */
  public static Antithrombotics of(Facts facts) {
    return new Antithrombotics(facts);
  }

  /** Every drug in use against every guideline. */
  public List<AntithromboticPlan> check(Before before) {
    return before.anticoagulation().inUse().stream().map(taken -> check(taken, before)).toList();
  }

  private AntithromboticPlan check(Antithrombotic taken, Before before) {
    Circumstances circumstances = new Circumstances(taken, before);
    List<GuidelineAnswer> answers = new ArrayList<>();
    for (String voice : VOICES) {
      List<HoldRule> rows = rows(voice, taken);
      if (!rows.isEmpty() || ALWAYS.contains(voice)) {
        answers.add(answer(Voice.of(facts, voice), rows, circumstances));
      }
    }
    Set<Reply> replies =
        answers.stream()
            .map(GuidelineAnswer::reply)
            .filter(r -> r != Reply.ASK)
            .collect(Collectors.toSet());
    OptionalDouble hours = circumstances.hours();
    return new AntithromboticPlan(
        taken,
        hours.isPresent() && hours.getAsDouble() >= 0 ? hours : OptionalDouble.empty(),
        answers,
        replies.size() > 1);
  }

  private List<HoldRule> rows(String voice, Antithrombotic taken) {
    return taken
        .drug()
        .map(
            drug ->
                rules.stream()
                    .filter(r -> r.voice().equals(voice) && r.drug().equals(drug.code()))
                    .toList())
        .orElse(List.of());
  }

  private GuidelineAnswer answer(Voice voice, List<HoldRule> rows, Circumstances circumstances) {
    if (rows.isEmpty()) {
      return ask(voice, "no interval for this drug was read: ask the prescriber");
    }
    OptionalDouble clearance = circumstances.anticoagulation().creatinineClearance();
    DoseClass dose = circumstances.taken().doseClass();
    List<HoldRule> forDose = rows.stream().filter(r -> r.isFor(dose)).toList();
    List<HoldRule> fitting = forDose.stream().filter(r -> r.isFor(clearance)).toList();
    if (forDose.isEmpty()) {
      return ask(voice, "no interval for this dose class was read: ask the prescriber");
    }
    if (fitting.isEmpty()) {
      return ask(voice, "its part for this creatinine clearance was not read: ask the prescriber");
    }
    return answer(voice, fitting, circumstances, unknowns(forDose, circumstances));
  }

  /** What the rows depend on and nobody has said. */
  private static List<String> unknowns(List<HoldRule> rows, Circumstances circumstances) {
    List<String> unknown = new ArrayList<>();
    boolean isByDose = rows.stream().map(HoldRule::dose).distinct().count() > 1;
    if (circumstances.taken().doseClass() == DoseClass.UNKNOWN
        && (isByDose || rows.stream().noneMatch(r -> r.dose().equals("any")))) {
      unknown.add("the dose class (low or high)");
    }
    if (circumstances.anticoagulation().creatinineClearance().isEmpty()
        && rows.stream().anyMatch(r -> !r.band().isEvery())) {
      unknown.add("the creatinine clearance");
    }
    return unknown;
  }

  private GuidelineAnswer answer(
      Voice voice, List<HoldRule> rows, Circumstances circumstances, List<String> unknown) {
    List<HoldCheck> checks = rows.stream().map(r -> HoldCheck.of(r, circumstances)).toList();
    HoldCheck check = unknown.isEmpty() ? checks.getFirst() : open(rows, checks, unknown);
    return new GuidelineAnswer(
        voice,
        together(rows.stream().map(r -> hours(r.hold())).toList()),
        together(rows.stream().map(HoldRule::restart).toList()),
        together(rows.stream().map(HoldRule::restartTraumatic).toList()),
        rows.stream()
            .flatMap(r -> r.conditions().stream())
            .map(Condition::toText)
            .distinct()
            .toList(),
        check.reply(),
        check.reason(),
        rows.stream().map(HoldRule::grounds).reduce(Grounds::and).orElseThrow());
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
    if (isCovered && checks.stream().allMatch(c -> c.reply() == Reply.NOT_PASSED)) {
      return new HoldCheck(
          Reply.NOT_PASSED,
          checks.getFirst().reason() + ", whatever " + String.join(" and ", unknown));
    }
    String each =
        rows.stream()
            .map(Antithrombotics::describe)
            .filter(text -> !text.isEmpty())
            .distinct()
            .collect(Collectors.joining("; "));
    return new HoldCheck(
        Reply.ASK, missing + (each.isEmpty() ? "" : " (" + each + ")") + "; ask the prescriber");
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

  private GuidelineAnswer ask(Voice voice, String reason) {
    return new GuidelineAnswer(
        voice,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        Reply.ASK,
        reason,
        facts.grounds("guideline.unread"));
  }
}
