package cistern.panel;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Printed;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.Set;

/**
 * An albumin quotient outside the range in which the quotient limits were established. Verdicts
 * stand.
 *
 * @param lower of the established range
 * @param upper of the established range
 * @param place where the CSF albumin stands
 * @param grounds what the range rests on
 */
public record QuotientOutsideRange(double lower, double upper, String place, Grounds grounds)
    implements PanelTrouble {

  private static final String LOWER = "albumin-quotient.established.lower";
  private static final String UPPER = "albumin-quotient.established.upper";

  static Optional<QuotientOutsideRange> check(Panel panel, Set<Sample> suspected, Facts facts) {
    Sample csf = Sample.csf(Analyte.ALBUMIN);
    Sample serum = Sample.serum(Analyte.ALBUMIN);
    Optional<Measurement> fluid = panel.find(csf);
    Optional<Measurement> blood = panel.find(serum);
    if (fluid.isEmpty() || blood.isEmpty()) {
      return Optional.empty();
    }
    Interval below = fluid.get().value();
    Interval above = blood.get().value();
    double lower = facts.number(LOWER);
    double upper = facts.number(UPPER);
    if (above.isZero() || suspected.contains(csf) || suspected.contains(serum)) {
      return Optional.empty();
    }
    Interval quotient = below.dividedBy(above);
    return quotient.upper() < lower || quotient.lower() > upper
        ? Optional.of(
            new QuotientOutsideRange(
                lower, upper, fluid.get().place(), facts.grounds(LOWER, UPPER)))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "quotient-outside-range";
  }

  @Override
  public String text() {
    return "The albumin quotient lies outside %s to %s × 10⁻³, where the quotient limits were established: the limits are extrapolated."
        .formatted(Printed.quotient(lower), Printed.quotient(upper));
  }
}
