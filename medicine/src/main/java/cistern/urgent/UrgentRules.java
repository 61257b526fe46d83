package cistern.urgent;

import cistern.bedside.RuleReply;
import cistern.fact.Grounds;
import cistern.measurement.Answer;
import cistern.urgent.Trigger.AtLeast;
import cistern.urgent.Trigger.Compared;
import cistern.urgent.Trigger.Not;
import cistern.urgent.Trigger.Stated;
import cistern.urgent.Trigger.Unless;
import cistern.urgent.Trigger.Where;
import cistern.urgent.Urgency.State;
import cistern.urgent.UrgentRule.Grade;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The catalogue of urgent patterns, in the order in which they are said inside a tier. */
public final class UrgentRules {

  private static final List<UrgentRule> ROWS =
      List.of(
          InfectionRules.MICROBE_FOUND,
          InfectionRules.BACTERIAL_PATTERN,
          OtherRules.SPINAL_BLOCK,
          InfectionRules.HERPES_POSSIBLE,
          OtherRules.BLEEDING,
          InfectionRules.FUNGAL_POSSIBLE,
          InfectionRules.LACTATE_AND_CELLS,
          OtherRules.PRESSURE_RAISED,
          OtherRules.PROTEIN_WITHOUT_CELLS,
          InfectionRules.TUBERCULOUS_PATTERN,
          OtherRules.ATYPICAL_CELLS,
          InfectionRules.FEW_CELLS,
          OtherRules.YELLOW_OR_BLOODY,
          OtherRules.LOW_SUGAR,
          OtherRules.LYMPHOMA_POSSIBLE,
          OtherRules.PRESSURE_LOW,
          InfectionRules.BORRELIA_PATTERN,
          InfectionRules.SYPHILIS_POSSIBLE,
          InfectionRules.MEASLES_VERY_HIGH,
          OtherRules.AUTOIMMUNE,
          OtherRules.SARCOID,
          OtherRules.EOSINOPHILS,
          OtherRules.PML,
          OtherRules.QUIET_LOW_SUGAR);

  private static final Comparator<Urgency> BY_TIER = Comparator.comparing(Urgency::tier);

  private final Observed observed;

  private UrgentRules(Observed observed) {
    this.observed = observed;
  }

  /** The codes of all rows. */
  public static List<String> codes() {
    return Stream.concat(ROWS.stream(), Stream.of(OtherRules.MANY_CELLS))
        .map(UrgentRule::code)
        .toList();
  }

  /**
   * Whether none of the five predictors of bacterial meningitis holds where somebody thinks of it:
   * infection is asked about, or a fever was found. A predictor that is not known counts as open.
   */
  static boolean isWithoutPredictors(Observed observed) {
    return Cues.isInfectionThoughtOf(observed)
        && !observed.isInfant()
        && InfectionRules.isWithoutPredictors(observed);
  }

  /** What must be said first of some observations. */
  public static Urgent check(Observed observed) {
    return new UrgentRules(observed).urgent();
  }

  private Urgent urgent() {
    List<Asked> all = new ArrayList<>();
    ROWS.forEach(row -> all.addAll(of(row)));
    if (all.stream().noneMatch(Asked::holds)) {
      all.addAll(of(OtherRules.MANY_CELLS));
    }
    boolean isNamingUnknown =
        observed.setting().isForInfection()
            || all.stream().anyMatch(a -> a.holds() && a.grade().tier() != Tier.T2);
    return new Urgent(
        all.stream()
            .filter(a -> a.holds() || isNamingUnknown)
            .map(a -> a.holds() ? holding(a.row(), a.grade()) : unknown(a.row(), a.grade()))
            .sorted(BY_TIER)
            .toList());
  }

  /** A grade of a row that holds, or could hold. */
  private record Asked(UrgentRule row, Grade grade, boolean holds) {}

  /** The grade of a row that holds, and the graver ones that are unknown. */
  private List<Asked> of(UrgentRule row) {
    List<Asked> all = new ArrayList<>();
    for (Grade grade : row.grades()) {
      Answer answer = grade.trigger().answer(observed);
      if (answer == Answer.UNKNOWN && grade.isNamedUnknown()) {
        all.add(new Asked(row, grade, false));
      }
      if (answer.isYes()) {
        all.add(new Asked(row, grade, true));
        return all;
      }
    }
    return all;
  }

  private Urgency unknown(UrgentRule row, Grade grade) {
    List<String> missing = grade.trigger().missing(observed);
    String name = observed.facts().word("urgent." + row.code());
    String text = "Not known: %s (missing: %s).".formatted(name, String.join(", ", missing));
    Urgency.Words words = new Urgency.Words(text, grade.act(), missing);
    return urgency(row, grade, State.UNKNOWN, words);
  }

  private Urgency holding(UrgentRule row, Grade grade) {
    String values =
        grade.trigger().reasons(observed).stream()
            .map(Reason::text)
            .distinct()
            .collect(Collectors.joining(", "));
    String say = grade.say().apply(observed, values);
    String text = say.substring(0, 1).toUpperCase(Locale.ROOT) + say.substring(1);
    return urgency(row, grade, State.HOLDS, new Urgency.Words(text, grade.act(), List.of()));
  }

  private Urgency urgency(UrgentRule row, Grade grade, State state, Urgency.Words words) {
    List<String> findings =
        grade.trigger().reasons(observed).stream().map(Reason::finding).distinct().toList();
    Optional<RuleReply> answered =
        observed.bedside().replies().stream()
            .filter(r -> r.to().equals(row.code()) && r.isComplete())
            .findFirst();
    return new Urgency(
        row.code(),
        grade.tier(),
        state,
        row.isInfection(),
        words,
        state == State.HOLDS ? findings : List.of(),
        state == State.HOLDS ? answered : Optional.empty(),
        grounds(row, grade));
  }

  private Grounds grounds(UrgentRule row, Grade grade) {
    Set<String> keys = new LinkedHashSet<>(List.of("urgent." + row.code()));
    collect(grade.trigger(), keys);
    return observed.facts().grounds(keys.toArray(String[]::new));
  }

  private void collect(Trigger trigger, Set<String> keys) {
    switch (trigger) {
      case Compared compared -> keys.add(compared.key());
      case Not not -> keys.add(not.other().key());
      case Stated stated -> {}
      case Unless unless -> {}
      case AtLeast some ->
          some.parts().stream()
              .filter(p -> p.answer(observed) != Answer.NO)
              .forEach(p -> collect(p, keys));
      case Where where ->
          collect(where.condition().apply(observed) ? where.then() : where.otherwise(), keys);
    }
  }
}
