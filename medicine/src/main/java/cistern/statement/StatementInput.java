package cistern.statement;

import cistern.analysis.Puncture;
import cistern.conflict.Conflict;
import cistern.criteria.CriteriaResult;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Problem;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import cistern.redflag.RedFlag;
import cistern.uncertainty.RepeatChange;
import cistern.urgent.Alerts;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Everything that statements are built from.
 *
 * @param puncture what was found
 * @param conflicts what disagrees
 * @param problems all problems of the work-up
 * @param repeat how often verdicts would change in a repeat
 * @param criteria what the editions say; empty where nothing was stated for them
 * @param flags what argues against MS
 * @param alerts what comes before any verdict
 */
public record StatementInput(
    Puncture puncture,
    List<Conflict> conflicts,
    List<Problem> problems,
    RepeatChange repeat,
    List<CriteriaResult> criteria,
    List<RedFlag> flags,
    Alerts alerts) {

  /** Findings whose nearness to their limit is worth a sentence; others follow from these. */
  private static final List<FindingCode> NEAR =
      List.of(
          FindingCode.ALBUMIN_QUOTIENT,
          FindingCode.IGG_QUOTIENT,
          FindingCode.IGA_QUOTIENT,
          FindingCode.IGM_QUOTIENT,
          FindingCode.KAPPA_QUOTIENT,
          FindingCode.IGG_INDEX,
          FindingCode.KAPPA_INDEX,
          FindingCode.IGG_SYNTHESIS_RATE,
          FindingCode.GLUCOSE_RATIO,
          FindingCode.LACTATE,
          FindingCode.TOTAL_PROTEIN);

  /** Findings that show antibody made inside the CNS when they are above their limit. */
  private static final List<FindingCode> SYNTHESIS =
      List.of(
          FindingCode.KAPPA_INDEX,
          FindingCode.KAPPA_FRACTION,
          FindingCode.IGG_FRACTION,
          FindingCode.IGA_FRACTION,
          FindingCode.IGM_FRACTION,
          FindingCode.IGG_INDEX,
          FindingCode.MRZ_REACTION);

  /** Copies the lists. */
  public StatementInput {
    conflicts = List.copyOf(conflicts);
    problems = List.copyOf(problems);
    criteria = List.copyOf(criteria);
    flags = List.copyOf(flags);
  }

  List<Finding> above() {
    return synthesis().filter(Finding::isAbove).toList();
  }

  List<Finding> decided() {
    return synthesis().filter(f -> f.verdict().isDecided()).toList();
  }

  /** Decided findings whose chance to lie above their limit is neither small nor great. */
  List<Finding> near(double chance) {
    return NEAR.stream()
        .map(puncture::finding)
        .filter(f -> f.verdict().isDecided())
        .filter(f -> isBetween(f.uncertainty().probabilityAbove(), chance))
        .toList();
  }

  private static boolean isBetween(OptionalDouble probability, double chance) {
    return probability.isPresent()
        && probability.getAsDouble() >= chance
        && probability.getAsDouble() <= 1 - chance;
  }

  private Stream<Finding> synthesis() {
    return SYNTHESIS.stream().map(puncture::finding);
  }

  /** Whether nothing may be said of MS beside the answer. */
  boolean isMsUnsaid() {
    return alerts.isInfant() || alerts.isContradicted();
  }

  boolean hasProblem(String... codes) {
    return problems.stream().anyMatch(p -> List.of(codes).contains(p.code()));
  }

  boolean isValueDoubted() {
    return !puncture.panel().suspected().isEmpty();
  }

  boolean isBloodWithholding() {
    return hasProblem("blood-contaminated")
        && puncture.verdict(FindingCode.IGG_QUOTIENT) == Verdict.UNDETERMINED
        && puncture.finding(FindingCode.IGG_QUOTIENT).hasValue();
  }

  boolean isBloodCounted() {
    return puncture.has(Sample.blood(Analyte.ERYTHROCYTES))
        && puncture.has(Sample.blood(Analyte.HEMATOCRIT));
  }

  boolean hasPair(Analyte analyte) {
    return puncture.has(Sample.csf(analyte)) && puncture.has(Sample.serum(analyte));
  }

  boolean hasCsf(Analyte analyte) {
    return puncture.has(Sample.csf(analyte));
  }
}
