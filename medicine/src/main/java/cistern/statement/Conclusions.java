package cistern.statement;

import cistern.bands.BandVerdict;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.urgent.UnusableBands;
import java.util.List;
import java.util.Optional;

/** Chooses the answer that the evidence allows. */
final class Conclusions {

  private Conclusions() {}

  static Conclusion of(StatementInput input) {
    if (input.puncture().isPairInvalid()) {
      return new Conclusion.SynthesisUndetermined(
          "CSF and serum were drawn too far apart to compare");
    }
    return switch (verdict(input)) {
      case POSITIVE ->
          new Conclusion.SynthesisDemonstrated(
              input.puncture().bands().counts().csfOnly(),
              input.puncture().bands().cutOff(),
              input.puncture().bands().isConfirmed(),
              input.above(),
              input.isMsUnsaid());
      case BORDERLINE ->
          new Conclusion.SynthesisEquivocal(
              input.puncture().bands().counts().csfOnly().orElse(1),
              input.puncture().bands().cutOff());
      case NEGATIVE -> negative(input);
      case UNDETERMINED -> unknown(input);
    };
  }

  /** What the bands say, where nothing stops them. */
  private static BandVerdict verdict(StatementInput input) {
    return input.alerts().isBandsUnknown()
        ? BandVerdict.UNDETERMINED
        : input.puncture().bands().verdict();
  }

  /**
   * Without bands and with a κ index under its cut-off nothing is demonstrated, whatever a fraction
   * says; a class beside IgG, or the index itself, can still speak.
   */
  private static Conclusion negative(StatementInput input) {
    boolean isKappaUnder =
        switch (input.puncture().findings().verdict(FindingCode.KAPPA_INDEX)) {
          case WITHIN, BELOW, BORDERLINE -> true;
          case ABOVE, UNDETERMINED -> false;
        };
    List<Finding> speaking =
        input.above().stream()
            .filter(f -> f.code() != FindingCode.KAPPA_FRACTION)
            .filter(f -> f.code() != FindingCode.IGG_INDEX)
            .filter(f -> !isKappaUnder || f.code() != FindingCode.IGG_FRACTION)
            .toList();
    return speaking.isEmpty()
        ? new Conclusion.SynthesisNotDemonstrated(
            true, isAllWithin(input), input.decided(), input.isMsUnsaid())
        : new Conclusion.SynthesisSuggested(speaking, BandVerdict.NEGATIVE);
  }

  /** Whether something beside the bands was measured and nothing of it lies above its limit. */
  private static boolean isAllWithin(StatementInput input) {
    return input.above().isEmpty() && !input.decided().isEmpty();
  }

  private static Conclusion unknown(StatementInput input) {
    List<Finding> speaking =
        input.above().stream()
            .filter(f -> f.code() != FindingCode.KAPPA_FRACTION || !isKappaKnown(input))
            .toList();
    if (!speaking.isEmpty()) {
      return new Conclusion.SynthesisSuggested(speaking, BandVerdict.UNDETERMINED);
    }
    boolean isUnused = input.alerts().isBandsUnknown() && input.puncture().bands().isReported();
    if (isQuotientDecided(input) && !isUnused) {
      return new Conclusion.SynthesisNotDemonstrated(
          false, true, input.decided(), input.isMsUnsaid());
    }
    return new Conclusion.SynthesisUndetermined(reason(input));
  }

  private static boolean isKappaKnown(StatementInput input) {
    return input.puncture().findings().verdict(FindingCode.KAPPA_INDEX).isDecided();
  }

  private static boolean isQuotientDecided(StatementInput input) {
    return input.puncture().findings().verdict(FindingCode.IGG_FRACTION).isDecided()
        || input.puncture().findings().verdict(FindingCode.KAPPA_INDEX).isDecided();
  }

  private static String reason(StatementInput input) {
    Optional<UnusableBands> unusable = input.alerts().unusableBands();
    if (unusable.isPresent()) {
      return switch (unusable.get()) {
        case MONOCLONAL -> "a monoclonal pattern hides what the bands would say";
        case IMMUNOGLOBULIN ->
            "an infusion of immunoglobulin may have brought bands into serum and fluid";
        case WITHOUT_SERUM -> "the bands were read without a serum beside them";
        case NOT_LUMBAR -> "the fluid is not lumbar, and the bands cannot be used";
      };
    }
    if (input.isValueDoubted()) {
      return "a value is doubted and bands are not known";
    }
    if (input.isBloodWithholding()) {
      return "blood in the CSF can feign synthesis, and bands are not known";
    }
    return input.hasPair(Analyte.IGG) && input.hasPair(Analyte.ALBUMIN)
        ? "the values do not decide it, and bands are not known"
        : "neither bands nor a complete pair of albumin and IgG, or of albumin and κ, is known";
  }
}
