package cistern.statement;

import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.finding.Verdict;

/**
 * Whether the barrier leaks.
 *
 * @param quotient the albumin quotient
 * @param severeFrom the quotient from which a leak is called severe
 */
public record BarrierStatement(Finding quotient, double severeFrom) implements Statement {

  @Override
  public String code() {
    return switch (quotient.verdict()) {
      case ABOVE -> "barrier-leaks";
      case WITHIN, BELOW, BORDERLINE -> "barrier-holds";
      case UNDETERMINED -> "barrier-undetermined";
    };
  }

  @Override
  public String text() {
    String beside = figures();
    return switch (quotient.verdict()) {
      case ABOVE ->
          "The blood–CSF barrier leaks, or CSF flows slowly%s%s."
              .formatted(isSevere() ? ", severely" : "", beside);
      case WITHIN, BELOW, BORDERLINE ->
          "No leak of the blood–CSF barrier is seen%s.".formatted(beside);
      case UNDETERMINED ->
          "Whether the blood–CSF barrier leaks is undetermined: %s."
              .formatted(quotient.note().replaceFirst("^undetermined because ", ""));
    };
  }

  /** Whether the quotient lies above the limit and where a leak is called severe. */
  public boolean isSevere() {
    return quotient.isAbove()
        && quotient.number().isPresent()
        && quotient.number().getAsDouble() > severeFrom;
  }

  private String figures() {
    if (quotient.number().isEmpty() || quotient.verdict() == Verdict.UNDETERMINED) {
      return "";
    }
    double value = quotient.number().getAsDouble();
    return quotient
        .limits()
        .above()
        .map(
            cut ->
                " (albumin quotient %s × 10⁻³, limit %s)"
                    .formatted(
                        Printed.besideLimit(FindingCode.ALBUMIN_QUOTIENT, value, cut.at()),
                        Printed.quotient(cut.at())))
        .orElse("");
  }
}
