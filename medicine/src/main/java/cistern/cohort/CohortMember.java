package cistern.cohort;

import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.bands.BandVerdict;
import cistern.criteria.Presentation;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.interpretation.Interpretation;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Needle;
import java.time.YearMonth;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one interpreted puncture gives to a cohort.
 *
 * @param id of the work-up
 * @param ageYears the person's age
 * @param month in which the fluid was drawn
 * @param values the findings that are a number, in the unit of their code
 * @param verdicts the verdict of every finding
 * @param criteria the verdict of each edition
 * @param quality what happened
 * @param amounts what was measured of the puncture
 * @param needle the kind of needle and its gauge, as words
 * @param gel what was made of the gel
 * @param foretold the probability that was given, if one was
 * @param diagnosis what it turned out to be, as the work-up says it
 */
public record CohortMember(
    String id,
    OptionalDouble ageYears,
    Optional<YearMonth> month,
    Map<FindingCode, Double> values,
    Map<FindingCode, Verdict> verdicts,
    Map<String, String> criteria,
    Map<QualityFigure, Answer> quality,
    Map<QualityAmount, Double> amounts,
    String needle,
    Gel gel,
    Optional<Foretold> foretold,
    Optional<String> diagnosis) {

  /**
   * What was made of a gel.
   *
   * @param bands what counts
   * @param other what the program or a second reader made of the same gel
   * @param isOfAttack whether the person came with a typical first attack
   */
  public record Gel(BandVerdict bands, Optional<BandVerdict> other, boolean isOfAttack) {}

  /**
   * A probability that was given before the end was known.
   *
   * @param withBands whether bands, or what stands for them, were found
   * @param prior the middle of what was stated before the fluid
   * @param point after it
   * @param lower the lower end of the predictive interval
   * @param upper its upper end
   */
  public record Foretold(
      boolean withBands, double prior, double point, double lower, double upper) {}

  /** Copies the collections. */
  public CohortMember {
    values = values.isEmpty() ? Map.of() : new EnumMap<>(values);
    verdicts = new EnumMap<>(verdicts);
    criteria = new LinkedHashMap<>(criteria);
    quality = new EnumMap<>(quality);
    amounts = amounts.isEmpty() ? Map.of() : new EnumMap<>(amounts);
  }

  /**
   * What an interpretation gives.
   *
   * @param interpretation of the puncture
   * @param recorded what its work-up keeps for a cohort
   * @param facts under which it was interpreted
   */
  public static CohortMember of(Interpretation interpretation, Recorded recorded, Facts facts) {
    Map<FindingCode, Double> values = new EnumMap<>(FindingCode.class);
    Map<FindingCode, Verdict> verdicts = new EnumMap<>(FindingCode.class);
    for (Finding finding : interpretation.findings().all()) {
      verdicts.put(finding.code(), finding.verdict());
      finding.number().ifPresent(value -> values.put(finding.code(), value));
    }
    Map<String, String> criteria = new LinkedHashMap<>();
    interpretation
        .weighed()
        .criteria()
        .forEach(result -> criteria.put(result.edition(), result.verdict().word()));
    var workup = interpretation.workup();
    return new CohortMember(
        workup.id(),
        workup.panel().person().ageYears(),
        workup.panel().csf().at().map(YearMonth::from),
        values,
        verdicts,
        criteria,
        quality(interpretation, recorded, facts),
        amounts(interpretation),
        needle(workup.procedure().done().needle()),
        gel(interpretation, recorded, facts),
        foretold(interpretation),
        recorded.diagnosis());
  }

  private static Map<QualityFigure, Answer> quality(
      Interpretation interpretation, Recorded recorded, Facts facts) {
    Map<QualityFigure, Answer> quality = new EnumMap<>(QualityFigure.class);
    for (QualityFigure figure : QualityFigure.values()) {
      quality.put(figure, figure.of(interpretation, recorded, facts));
    }
    return quality;
  }

  private static Map<QualityAmount, Double> amounts(Interpretation interpretation) {
    Map<QualityAmount, Double> amounts = new EnumMap<>(QualityAmount.class);
    for (QualityAmount amount : QualityAmount.values()) {
      amount.of(interpretation).ifPresent(value -> amounts.put(amount, value));
    }
    return amounts;
  }

  private static Gel gel(Interpretation interpretation, Recorded recorded, Facts facts) {
    BandReading reading = interpretation.bands();
    Optional<BandReport> program =
        reading.report() instanceof BandReport.Counted counted
            ? counted.gel().map(BandReport.class::cast)
            : Optional.empty();
    return new Gel(
        reading.verdict(),
        recorded.second().or(() -> program).map(other -> BandReading.of(other, facts).verdict()),
        interpretation.workup().clinical().evidence().presentation() == Presentation.ATTACK);
  }

  private static Optional<Foretold> foretold(Interpretation interpretation) {
    var probability = interpretation.weighed().differential().probability();
    return probability
        .given()
        .map(
            given ->
                new Foretold(
                    given.isFound(),
                    probability.prior().orElseThrow().middle(),
                    given.point(),
                    given.interval95().lower(),
                    given.interval95().upper()));
  }

  private static String needle(Needle needle) {
    return needle.tip().code()
        + (needle.gauge().isPresent() ? " " + needle.gauge().getAsInt() + "G" : "");
  }
}
