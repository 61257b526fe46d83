package cistern.criteria;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.measurement.Interval;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import java.util.List;

/** Where the κ index stands for the 2024 edition. */
enum KappaIndex {
  /** At the cut-off or over it. */
  POSITIVE,
  /** In the grey zone under the cut-off. */
  GREY,
  /** Under the grey zone. */
  LOW,
  /** Not measured, or not usable. */
  UNMEASURED;

  private static final String UPPER = "kappa-index.upper";
  private static final String BORDERLINE = "kappa-index.borderline";

  /**
   * Where a finding stands: a censored index whose open upper end does not pass the cut-off is
   * under it, and no value is ever put in its place.
   */
  static KappaIndex of(CheckedPanel panel, Finding index, Facts facts) {
    return switch (index.verdict()) {
      case ABOVE -> POSITIVE;
      case BORDERLINE -> GREY;
      case WITHIN, BELOW -> LOW;
      case UNDETERMINED -> {
        boolean isDoubted = new Inputs(panel, index.inputs(), List.of()).doubt().isPresent();
        yield isDoubted
            ? UNMEASURED
            : index.value().map(v -> censored(v, facts)).orElse(UNMEASURED);
      }
    };
  }

  private static KappaIndex censored(Interval value, Facts facts) {
    if (value.isExact() || value.upper() > facts.number(UPPER)) {
      return UNMEASURED;
    }
    return value.upper() > facts.number(BORDERLINE) ? GREY : LOW;
  }

  /** Whether it is known to be under the cut-off. */
  boolean isUnder() {
    return this == GREY || this == LOW;
  }
}
