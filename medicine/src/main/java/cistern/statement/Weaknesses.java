package cistern.statement;

import cistern.bands.BandVerdict;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.panel.Pairing;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** Finds the weakest link: the worst weakness that could change this answer, and no other. */
final class Weaknesses {

  /** What bands lean on, and no number does. */
  private static final Set<Weakness> OF_BANDS =
      Set.of(
          Weakness.GEL_UNCONFIRMED,
          Weakness.DRAWS_DOUBTFUL,
          Weakness.IN_CONFLICT,
          Weakness.TIMES_UNKNOWN);

  private static final Set<Weakness> OF_NUMBERS = Set.of(Weakness.values());

  private final StatementInput input;
  private final Conclusion conclusion;
  private final double nearChance;

  private Weaknesses(StatementInput input, Conclusion conclusion, double nearChance) {
    this.input = input;
    this.conclusion = conclusion;
    this.nearChance = nearChance;
  }

  static Optional<Weakness> of(StatementInput input, Conclusion conclusion, double nearChance) {
    return new Weaknesses(input, conclusion, nearChance).worst();
  }

  private Optional<Weakness> worst() {
    Set<Weakness> able = able();
    return Arrays.stream(Weakness.values())
        .filter(able::contains)
        .filter(this::isPresent)
        .findFirst();
  }

  /** What could change the answer; an answer that is open has said why. */
  private Set<Weakness> able() {
    return switch (conclusion) {
      case Conclusion.SynthesisDemonstrated bands -> OF_BANDS;
      case Conclusion.SynthesisEquivocal one -> OF_BANDS;
      case Conclusion.SynthesisNotDemonstrated none ->
          none.isFocused() ? withNumbers() : OF_NUMBERS;
      case Conclusion.SynthesisSuggested numbers -> OF_NUMBERS;
      case Conclusion.SynthesisUndetermined open -> Set.of();
    };
  }

  /** Without bands a number over its limit would still speak. */
  private static Set<Weakness> withNumbers() {
    Set<Weakness> able = EnumSet.copyOf(OF_BANDS);
    able.add(Weakness.VALUE_DOUBTED);
    able.add(Weakness.BORDERLINE);
    able.add(Weakness.NEAR_LIMIT);
    return able;
  }

  private boolean isPresent(Weakness weakness) {
    return switch (weakness) {
      case DRAWS_TOO_FAR_APART -> input.puncture().isPairInvalid();
      case VALUE_DOUBTED -> input.isValueDoubted();
      case BLOOD -> input.isBloodWithholding();
      case PAIR_INCOMPLETE -> !input.hasPair(Analyte.ALBUMIN) || !input.hasPair(Analyte.IGG);
      case GEL_UNCONFIRMED ->
          input.puncture().bands().isReported() && !input.puncture().bands().isConfirmed();
      case DRAWS_DOUBTFUL ->
          input.puncture().panel().pairing().verdict() == Pairing.Verdict.DOUBTFUL;
      case TREATED -> input.hasProblem("recent-immunoglobulin", "plasma-exchange");
      case SERUM_LOW -> input.hasProblem("serum-albumin-low", "serum-igg-low");
      case IN_CONFLICT -> isInConflict();
      case NOT_FOCUSED -> input.puncture().bands().verdict() == BandVerdict.UNDETERMINED;
      case BORDERLINE -> isBorderline(FindingCode.KAPPA_INDEX);
      case NEAR_LIMIT -> input.near(nearChance).stream().anyMatch(Weaknesses::isOfSynthesis);
      case NOT_LUMBAR -> input.hasProblem("not-lumbar");
      case TIMES_UNKNOWN -> input.puncture().panel().pairing().verdict() == Pairing.Verdict.UNKNOWN;
    };
  }

  /** A disagreement in which the bands take part, where bands give the answer; else any. */
  private boolean isInConflict() {
    boolean isByBands =
        switch (conclusion) {
          case Conclusion.SynthesisDemonstrated bands -> true;
          case Conclusion.SynthesisEquivocal one -> true;
          case Conclusion.SynthesisNotDemonstrated none -> none.isFocused();
          case Conclusion.SynthesisSuggested numbers -> false;
          case Conclusion.SynthesisUndetermined open -> false;
        };
    return input.conflicts().stream()
        .map(c -> c.code())
        .anyMatch(
            code ->
                isByBands
                    ? code.startsWith("bands-against") || code.equals("counts-against-pattern")
                    : !code.equals("age-rules-disagree") && !code.equals("rate-against-fraction"));
  }

  /** Whether a value near its limit is one by which synthesis is judged. */
  private static boolean isOfSynthesis(Finding finding) {
    return switch (finding.code()) {
      case IGG_QUOTIENT, IGA_QUOTIENT, IGM_QUOTIENT, KAPPA_INDEX -> true;
      default -> false;
    };
  }

  private boolean isBorderline(FindingCode code) {
    return input.puncture().finding(code).verdict() == Verdict.BORDERLINE;
  }
}
