package cistern.statement;

import cistern.bands.BandVerdict;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.panel.Pairing;
import java.util.Optional;

/** Finds the weakest link: the worst weakness that the evidence has. */
final class Weaknesses {

  private Weaknesses() {}

  static Optional<Weakness> of(StatementInput input, boolean isNearLimit) {
    for (Weakness weakness : Weakness.values()) {
      if (weakness == Weakness.NEAR_LIMIT ? isNearLimit : isPresent(weakness, input)) {
        return Optional.of(weakness);
      }
    }
    return Optional.empty();
  }

  private static boolean isPresent(Weakness weakness, StatementInput input) {
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
      case IN_CONFLICT -> isInConflict(input);
      case NOT_FOCUSED -> input.puncture().bands().verdict() == BandVerdict.UNDETERMINED;
      case BORDERLINE -> isBorderline(input);
      case NEAR_LIMIT -> false;
      case NOT_LUMBAR -> input.hasProblem("not-lumbar");
      case TIMES_UNKNOWN -> input.puncture().panel().pairing().verdict() == Pairing.Verdict.UNKNOWN;
    };
  }

  private static boolean isInConflict(StatementInput input) {
    return input.conflicts().stream().anyMatch(c -> !c.code().equals("age-rules-disagree"));
  }

  private static boolean isBorderline(StatementInput input) {
    return input.puncture().bands().verdict() == BandVerdict.BORDERLINE
        || isBorderline(input.puncture().finding(FindingCode.KAPPA_INDEX))
        || isBorderline(input.puncture().finding(FindingCode.IGG_INDEX));
  }

  private static boolean isBorderline(Finding finding) {
    return finding.verdict() == Verdict.BORDERLINE;
  }
}
