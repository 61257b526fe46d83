package cistern.statement;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Chooses what to do next, in the order in which it would be done. */
final class NextSteps {

  private NextSteps() {}

  static List<NextStep> of(StatementInput input) {
    return Arrays.stream(NextStep.values()).filter(step -> isUseful(step, input)).toList();
  }

  private static boolean isUseful(NextStep step, StatementInput input) {
    return switch (step) {
      case REDRAW_PAIR -> input.hasProblem("draws-far-apart");
      case CHECK_VALUES -> input.isValueDoubted() || input.hasProblem("result-before-draw");
      case DRAW_SERUM -> input.hasProblem("serum-missing");
      case COUNT_BLOOD -> input.isBloodWithholding() && !input.isBloodCounted();
      case CONFIRM_GEL ->
          input.puncture().bands().isReported() && !input.puncture().bands().isConfirmed();
      case FOCUS -> !input.puncture().bands().isReported();
      case REPEAT_FOCUSING -> isFocusingDoubted(input);
      case ADD_KAPPA -> isKappaUseful(input);
      case IMMUNOFIXATION ->
          input.puncture().bands().pattern().equals(Optional.of(BandPattern.LADDER));
      case DILUTE_AND_REPEAT -> input.hasProblem("antigen-excess-suspected");
    };
  }

  private static boolean isFocusingDoubted(StatementInput input) {
    boolean isContradicted =
        input.puncture().bands().verdict() == BandVerdict.NEGATIVE
            && (input.puncture().isAbove(FindingCode.KAPPA_INDEX)
                || input.puncture().isAbove(FindingCode.IGG_FRACTION)
                || input.puncture().isAbove(FindingCode.IGG_INDEX));
    return input.puncture().bands().verdict() == BandVerdict.BORDERLINE
        || isContradicted
        || input.puncture().bands().contradictedPattern().isPresent();
  }

  private static boolean isKappaUseful(StatementInput input) {
    return !input.hasCsf(Analyte.KAPPA)
        && input.puncture().bands().verdict() != BandVerdict.POSITIVE
        && input.puncture().verdict(FindingCode.KAPPA_INDEX) == Verdict.UNDETERMINED
        && !input.puncture().isPairInvalid();
  }
}
