package cistern.cohort;

import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.bands.BandVerdict;
import cistern.criteria.Presentation;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.interpretation.Judged;
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
   * What a puncture gives.
   *
   * @param judged the puncture
   * @param recorded what its work-up keeps for a cohort
   * @param facts under which it was judged
   */
  public static CohortMember of(Judged judged, Recorded recorded, Facts facts) {
    Map<FindingCode, Double> values = new EnumMap<>(FindingCode.class);
    Map<FindingCode, Verdict> verdicts = new EnumMap<>(FindingCode.class);
    for (Finding finding : judged.puncture().findings().all()) {
      verdicts.put(finding.code(), finding.verdict());
      finding.number().ifPresent(value -> values.put(finding.code(), value));
    }
    Map<String, String> criteria = new LinkedHashMap<>();
    judged.judgement().criteria().forEach((year, verdict) -> criteria.put(year, verdict.word()));
    var workup = judged.workup();
    return new CohortMember(
        workup.id(),
        workup.panel().person().ageYears(),
        workup.panel().csf().at().map(YearMonth::from),
        values,
        verdicts,
        criteria,
        quality(judged, recorded, facts),
        amounts(judged),
        needle(workup.procedure().done().needle()),
        gel(judged, recorded, facts),
        foretold(judged),
        recorded.diagnosis());
  }

  private static Map<QualityFigure, Answer> quality(Judged judged, Recorded recorded, Facts facts) {
    Map<QualityFigure, Answer> quality = new EnumMap<>(QualityFigure.class);
    for (QualityFigure figure : QualityFigure.values()) {
      quality.put(figure, figure.of(judged, recorded, facts));
    }
    return quality;
  }

  private static Map<QualityAmount, Double> amounts(Judged judged) {
    Map<QualityAmount, Double> amounts = new EnumMap<>(QualityAmount.class);
    for (QualityAmount amount : QualityAmount.values()) {
      amount.of(judged).ifPresent(value -> amounts.put(amount, value));
    }
    return amounts;
  }

  private static Gel gel(Judged judged, Recorded recorded, Facts facts) {
    BandReading reading = judged.puncture().bands();
    Optional<BandReport> program =
        reading.report() instanceof BandReport.Counted counted
            ? counted.gel().map(BandReport.class::cast)
            : Optional.empty();
    return new Gel(
        reading.verdict(),
        recorded.second().or(() -> program).map(other -> BandReading.of(other, facts).verdict()),
        judged.workup().clinical().evidence().presentation() == Presentation.ATTACK);
  }

  private static Optional<Foretold> foretold(Judged judged) {
    var probability = judged.judgement().probability();
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
