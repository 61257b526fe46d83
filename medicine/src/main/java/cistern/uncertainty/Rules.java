package cistern.uncertainty;

import cistern.barrier.QuotientLimits;
import cistern.barrier.TourtellotteRate;
import cistern.fact.Facts;
import cistern.fluid.GlucoseRatio;
import cistern.measurement.Analyte;
import java.util.EnumMap;
import java.util.Map;

/** The published rules whose limits move with what is measured, read once from the facts. */
final class Rules {

  private final Map<Analyte, QuotientLimits> limits = new EnumMap<>(Analyte.class);
  private final Map<Analyte, Curve.Limit> curves = new EnumMap<>(Analyte.class);
  private final TourtellotteRate rate;
  private final Curve.Line leaked;
  private final GlucoseLimit glucose;
  private final double proteinPerCell;
  private final double leukocytesPerCell;

  private Rules(Facts facts) {
    for (Analyte analyte : new Analyte[] {Analyte.IGG, Analyte.IGA, Analyte.IGM, Analyte.KAPPA}) {
      QuotientLimits of = QuotientLimits.of(facts, analyte);
      limits.put(analyte, of);
      curves.put(analyte, new Curve.Limit(of.upper()));
    }
    rate = TourtellotteRate.of(facts);
    leaked = new Curve.Line(rate.leakage(), rate.molarRatio());
    glucose = GlucoseLimit.of(GlucoseRatio.of(facts));
    proteinPerCell = facts.number("blood.total-protein-per-thousand") / 1000;
    leukocytesPerCell = 1 / facts.number("blood.erythrocytes-per-leukocyte");
  }

  static Rules of(Facts facts) {
    return new Rules(facts);
  }

  /** The limits of the quotient of an immunoglobulin or of κ. */
  QuotientLimits limits(Analyte analyte) {
    return found(limits, analyte);
  }

  /** The upper one of them. */
  Curve.Limit curve(Analyte analyte) {
    return found(curves, analyte);
  }

  private static <T> T found(Map<Analyte, T> rules, Analyte analyte) {
    T rule = rules.get(analyte);
    if (rule == null) {
      throw new IllegalArgumentException("no quotient limit for " + analyte.code());
    }
    return rule;
  }

  /** CSF made in a day, L/d. */
  double csfPerDay() {
    return rate.csfPerDay();
  }

  /** The share of serum IgG that the synthesis rate takes as leaked, over the albumin quotient. */
  Curve.Line leaked() {
    return leaked;
  }

  GlucoseLimit glucose() {
    return glucose;
  }

  /** Total protein that one erythrocyte/µL brings, mg/L, where the blood was not counted. */
  double proteinPerCell() {
    return proteinPerCell;
  }

  /** Leukocytes that one erythrocyte brings, where the blood was not counted. */
  double leukocytesPerCell() {
    return leukocytesPerCell;
  }
}
