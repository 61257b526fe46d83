package cistern.statement;

import cistern.bands.BandVerdict;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.panel.Pairing;

/** Finds the weakest link: the worst weakness that the evidence has. */
final class Weaknesses {

  private Weaknesses() {}

  static Weakness of(Evidence evidence, boolean isNearLimit) {
    for (Weakness weakness : Weakness.values()) {
      if (weakness == Weakness.NEAR_LIMIT ? isNearLimit : isPresent(weakness, evidence)) {
        return weakness;
      }
    }
    return Weakness.CONSTANTS_UNCONFIRMED;
  }

  private static boolean isPresent(Weakness weakness, Evidence evidence) {
    return switch (weakness) {
      case DRAWS_TOO_FAR_APART -> evidence.isPairInvalid();
      case VALUE_DOUBTED -> evidence.isValueDoubted();
      case BLOOD -> evidence.isBloodWithholding();
      case PAIR_INCOMPLETE -> !evidence.hasPair(Analyte.ALBUMIN) || !evidence.hasPair(Analyte.IGG);
      case GEL_UNCONFIRMED -> evidence.bands().isReported() && !evidence.bands().isConfirmed();
      case DRAWS_DOUBTFUL -> evidence.panel().pairing().verdict() == Pairing.Verdict.DOUBTFUL;
      case TREATED -> evidence.hasProblem("recent-immunoglobulin", "plasma-exchange");
      case SERUM_LOW -> evidence.hasProblem("serum-albumin-low", "serum-igg-low");
      case IN_CONFLICT -> isInConflict(evidence);
      case NOT_FOCUSED -> evidence.bands().verdict() == BandVerdict.UNDETERMINED;
      case BORDERLINE -> isBorderline(evidence);
      case NEAR_LIMIT -> false;
      case NOT_LUMBAR -> evidence.hasProblem("not-lumbar");
      case TIMES_UNKNOWN -> evidence.panel().pairing().verdict() == Pairing.Verdict.UNKNOWN;
      case CONSTANTS_UNCONFIRMED -> true;
    };
  }

  private static boolean isInConflict(Evidence evidence) {
    return evidence.conflicts().stream().anyMatch(c -> !c.code().equals("age-rules-disagree"));
  }

  private static boolean isBorderline(Evidence evidence) {
    return evidence.bands().verdict() == BandVerdict.BORDERLINE
        || isBorderline(evidence.findings().get(FindingCode.KAPPA_INDEX))
        || isBorderline(evidence.findings().get(FindingCode.IGG_INDEX));
  }

  private static boolean isBorderline(Finding finding) {
    return finding.verdict() == Verdict.BORDERLINE;
  }
}
