package cistern.statement;

import cistern.bands.BandVerdict;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;

/** Chooses the answer that the evidence allows. */
final class Answers {

  private Answers() {}

  static Answer of(Evidence evidence) {
    if (evidence.isPairInvalid()) {
      return new Answer.SynthesisUndetermined("CSF and serum were drawn too far apart to compare");
    }
    return switch (evidence.bands().verdict()) {
      case POSITIVE ->
          new Answer.SynthesisDemonstrated(
              evidence.bands().counts().csfOnly(),
              evidence.bands().cutOff(),
              evidence.bands().isConfirmed(),
              evidence.above());
      case BORDERLINE, NEGATIVE, UNDETERMINED -> withoutBands(evidence);
    };
  }

  private static Answer withoutBands(Evidence evidence) {
    BandVerdict bands = evidence.bands().verdict();
    if (!evidence.above().isEmpty()) {
      return new Answer.SynthesisSuggested(evidence.above(), bands);
    }
    if (bands == BandVerdict.BORDERLINE) {
      return new Answer.SynthesisEquivocal(
          evidence.bands().counts().csfOnly().orElseThrow(), evidence.bands().cutOff());
    }
    if (bands == BandVerdict.NEGATIVE || isQuotientDecided(evidence)) {
      return new Answer.SynthesisNotDemonstrated(bands == BandVerdict.NEGATIVE, evidence.decided());
    }
    return new Answer.SynthesisUndetermined(reason(evidence));
  }

  private static boolean isQuotientDecided(Evidence evidence) {
    return evidence.findings().verdict(FindingCode.IGG_FRACTION).isDecided()
        || evidence.findings().verdict(FindingCode.KAPPA_INDEX).isDecided();
  }

  private static String reason(Evidence evidence) {
    if (evidence.isValueDoubted()) {
      return "a value is doubted and bands are not known";
    }
    if (evidence.isBloodWithholding()) {
      return "blood in the CSF can feign synthesis, and bands are not known";
    }
    return evidence.hasPair(Analyte.IGG) && evidence.hasPair(Analyte.ALBUMIN)
        ? "the values do not decide it, and bands are not known"
        : "neither bands nor a complete pair of albumin and IgG, or of albumin and κ, is known";
  }
}
