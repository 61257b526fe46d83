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

  static List<NextStep> of(Evidence evidence) {
    return Arrays.stream(NextStep.values()).filter(step -> isUseful(step, evidence)).toList();
  }

  private static boolean isUseful(NextStep step, Evidence evidence) {
    return switch (step) {
      case REDRAW_PAIR -> evidence.hasProblem("draws-far-apart");
      case CHECK_VALUES -> evidence.isValueDoubted() || evidence.hasProblem("result-before-draw");
      case DRAW_SERUM -> evidence.hasProblem("serum-missing");
      case COUNT_BLOOD -> evidence.isBloodWithholding() && !evidence.isBloodCounted();
      case CONFIRM_GEL -> evidence.bands().isReported() && !evidence.bands().isConfirmed();
      case FOCUS -> !evidence.bands().isReported();
      case REPEAT_FOCUSING -> isFocusingDoubted(evidence);
      case ADD_KAPPA -> isKappaUseful(evidence);
      case IMMUNOFIXATION -> evidence.bands().pattern().equals(Optional.of(BandPattern.LADDER));
      case DILUTE_AND_REPEAT -> evidence.hasProblem("antigen-excess-suspected");
    };
  }

  private static boolean isFocusingDoubted(Evidence evidence) {
    boolean isContradicted =
        evidence.bands().verdict() == BandVerdict.NEGATIVE
            && (evidence.isAbove(FindingCode.KAPPA_INDEX)
                || evidence.isAbove(FindingCode.IGG_FRACTION)
                || evidence.isAbove(FindingCode.IGG_INDEX));
    return evidence.bands().verdict() == BandVerdict.BORDERLINE
        || isContradicted
        || evidence.bands().contradictedPattern().isPresent();
  }

  private static boolean isKappaUseful(Evidence evidence) {
    return !evidence.hasCsf(Analyte.KAPPA)
        && evidence.bands().verdict() != BandVerdict.POSITIVE
        && evidence.findings().verdict(FindingCode.KAPPA_INDEX) == Verdict.UNDETERMINED
        && !evidence.isPairInvalid();
  }
}
