package cistern.statement;

import cistern.bands.BandVerdict;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;

/** Chooses the answer that the evidence allows. */
final class Conclusions {

  private Conclusions() {}

  static Conclusion of(StatementInput input) {
    if (input.puncture().isPairInvalid()) {
      return new Conclusion.SynthesisUndetermined(
          "CSF and serum were drawn too far apart to compare");
    }
    return switch (input.puncture().bands().verdict()) {
      case POSITIVE ->
          new Conclusion.SynthesisDemonstrated(
              input.puncture().bands().counts().csfOnly(),
              input.puncture().bands().cutOff(),
              input.puncture().bands().isConfirmed(),
              input.above());
      case BORDERLINE, NEGATIVE, UNDETERMINED -> withoutBands(input);
    };
  }

  private static Conclusion withoutBands(StatementInput input) {
    BandVerdict bands = input.puncture().bands().verdict();
    if (!input.above().isEmpty()) {
      return new Conclusion.SynthesisSuggested(input.above(), bands);
    }
    if (bands == BandVerdict.BORDERLINE) {
      return new Conclusion.SynthesisEquivocal(
          input.puncture().bands().counts().csfOnly().orElseThrow(),
          input.puncture().bands().cutOff());
    }
    if (bands == BandVerdict.NEGATIVE || isQuotientDecided(input)) {
      return new Conclusion.SynthesisNotDemonstrated(
          bands == BandVerdict.NEGATIVE, input.decided());
    }
    return new Conclusion.SynthesisUndetermined(reason(input));
  }

  private static boolean isQuotientDecided(StatementInput input) {
    return input.puncture().verdict(FindingCode.IGG_FRACTION).isDecided()
        || input.puncture().verdict(FindingCode.KAPPA_INDEX).isDecided();
  }

  private static String reason(StatementInput input) {
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
