package cistern.cohort;

import cistern.barrier.Hyperbola;
import cistern.barrier.QuotientLimits;
import cistern.barrier.TourtellotteRate;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.finding.FindingCode.Kind;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Quotients, limits, fractions, local amounts, indices and the synthesis rate of many panels, one
 * array a quantity, without uncertainty and without verdicts. Concentrations in serum and of CSF
 * albumin are positive; NaN is what was not measured, and what follows from it. The formulas are
 * those of the single panel, to the last bit; a test holds the two against each other.
 */
public final class QuotientColumns {

  /** Rows that are worked on together, so that what one loop writes the next finds in the cache. */
  private static final int BLOCK = 1024;

  private static final Sample CSF_ALBUMIN = Sample.csf(Analyte.ALBUMIN);
  private static final Sample SERUM_ALBUMIN = Sample.serum(Analyte.ALBUMIN);

  private static final List<Analyte> PROTEINS =
      List.of(Analyte.IGG, Analyte.IGA, Analyte.IGM, Analyte.KAPPA);

  private final Map<Analyte, Hyperbola> curves = new EnumMap<>(Analyte.class);
  private final TourtellotteRate rate;

  private QuotientColumns(Facts facts) {
    for (Analyte protein : PROTEINS) {
      curves.put(protein, QuotientLimits.of(facts, protein).upper());
    }
    rate = TourtellotteRate.of(facts);
  }

  /** The columns under some facts. */
  public static QuotientColumns of(Facts facts) {
    return new QuotientColumns(facts);
  }

  /** The samples that the columns are computed from. */
  public List<Sample> needed() {
    List<Sample> needed = new ArrayList<>(List.of(CSF_ALBUMIN, SERUM_ALBUMIN));
    for (Analyte protein : PROTEINS) {
      needed.add(Sample.csf(protein));
      needed.add(Sample.serum(protein));
    }
    return List.copyOf(needed);
  }

  /** Empty columns for so many rows, to be filled by {@link #interpret}. */
  public Computed columns(int rows) {
    Map<FindingCode, double[]> values = new EnumMap<>(FindingCode.class);
    Map<FindingCode, double[]> limits = new EnumMap<>(FindingCode.class);
    values.put(FindingCode.ALBUMIN_QUOTIENT, new double[rows]);
    for (Analyte protein : PROTEINS) {
      for (Kind kind : List.of(Kind.QUOTIENT, Kind.FRACTION, Kind.LOCAL, Kind.INDEX)) {
        values.put(FindingCode.of(kind, protein), new double[rows]);
      }
      limits.put(FindingCode.of(Kind.QUOTIENT, protein), new double[rows]);
    }
    values.put(FindingCode.IGG_SYNTHESIS_RATE, new double[rows]);
    return new Computed(rows, values, limits);
  }

  /** The columns of some concentrations, in mg/L, all of one length. */
  public Computed interpret(Map<Sample, double[]> concentrations) {
    Computed computed = columns(column(concentrations, CSF_ALBUMIN).length);
    interpret(concentrations, computed);
    return computed;
  }

  /** Overwrites columns with those of some concentrations, in mg/L, all of one length. */
  public void interpret(Map<Sample, double[]> concentrations, Computed computed) {
    Columns albumin =
        new Columns(column(concentrations, CSF_ALBUMIN), column(concentrations, SERUM_ALBUMIN));
    double[] quotient = computed.value(FindingCode.ALBUMIN_QUOTIENT);
    for (int from = 0; from < computed.rows(); from += BLOCK) {
      int to = Math.min(computed.rows(), from + BLOCK);
      divide(albumin, quotient, from, to);
      for (Map.Entry<Analyte, Hyperbola> curve : curves.entrySet()) {
        Analyte analyte = curve.getKey();
        Columns columns =
            new Columns(
                column(concentrations, Sample.csf(analyte)),
                column(concentrations, Sample.serum(analyte)));
        Target target = new Target(curve.getKey(), computed);
        target.quotientAndIndex(columns, from, to);
        target.fractionAndAmount(curve.getValue(), columns, from, to);
      }
      rates(concentrations, computed, from, to);
    }
  }

  private static double[] column(Map<Sample, double[]> concentrations, Sample sample) {
    double[] column = concentrations.get(sample);
    if (column == null) {
      throw new IllegalArgumentException("no column for " + sample.code());
    }
    return column;
  }

  /** The two fluids of one analyte. */
  private static final class Columns {

    private final double[] csf;
    private final double[] serum;

    Columns(double[] csf, double[] serum) {
      this.csf = csf;
      this.serum = serum;
    }
  }

  private static void divide(Columns columns, double[] quotient, int from, int to) {
    double[] csf = columns.csf;
    double[] serum = columns.serum;
    for (int i = from; i < to; i++) {
      quotient[i] = csf[i] / serum[i];
    }
  }

  /** The columns that one protein fills. */
  private record Target(Analyte protein, Computed computed) {

    private void quotientAndIndex(Columns columns, int from, int to) {
      double[] albumin = computed.value(FindingCode.ALBUMIN_QUOTIENT);
      double[] quotient = computed.value(FindingCode.of(Kind.QUOTIENT, protein));
      double[] index = computed.value(FindingCode.of(Kind.INDEX, protein));
      divide(columns, quotient, from, to);
      for (int i = from; i < to; i++) {
        index[i] = quotient[i] / albumin[i];
      }
    }

    /** The curve of {@link Hyperbola#at}, the fraction 1 − Qlim/Q, the amount C − Qlim·serum. */
    private void fractionAndAmount(Hyperbola curve, Columns columns, int from, int to) {
      double[] csf = columns.csf;
      double[] serum = columns.serum;
      double[] albumin = computed.value(FindingCode.ALBUMIN_QUOTIENT);
      double[] quotient = computed.value(FindingCode.of(Kind.QUOTIENT, protein));
      double[] limit = computed.limit(FindingCode.of(Kind.QUOTIENT, protein));
      double[] fraction = computed.value(FindingCode.of(Kind.FRACTION, protein));
      double[] local = computed.value(FindingCode.of(Kind.LOCAL, protein));
      double slope = curve.slope();
      double bSquared = curve.bSquared();
      double c = curve.c();
      for (int i = from; i < to; i++) {
        double at = slope * Math.sqrt(albumin[i] * albumin[i] + bSquared) - c;
        limit[i] = at;
        fraction[i] = Math.max(0, 1 - at / quotient[i]);
        local[i] = Math.max(0, csf[i] - at * serum[i]);
      }
    }
  }

  private void rates(Map<Sample, double[]> concentrations, Computed computed, int from, int to) {
    double[] csf = column(concentrations, Sample.csf(Analyte.IGG));
    double[] serum = column(concentrations, Sample.serum(Analyte.IGG));
    double[] albumin = computed.value(FindingCode.ALBUMIN_QUOTIENT);
    double[] rates = computed.value(FindingCode.IGG_SYNTHESIS_RATE);
    double flow = rate.csfPerDay();
    double leakage = rate.leakage();
    double ratio = rate.molarRatio();
    for (int i = from; i < to; i++) {
      rates[i] = flow * (csf[i] - serum[i] * (leakage + ratio * albumin[i]));
    }
  }

  /** One array a quantity. */
  public static final class Computed {

    private final int rows;
    private final Map<FindingCode, double[]> values;
    private final Map<FindingCode, double[]> limits;

    private Computed(
        int rows, Map<FindingCode, double[]> values, Map<FindingCode, double[]> limits) {
      this.rows = rows;
      this.values = values;
      this.limits = limits;
    }

    /** The number of rows. */
    public int rows() {
      return rows;
    }

    /** The codes that have values. */
    public Set<FindingCode> codes() {
      return values.keySet();
    }

    /** The values of a code, in its unit; the array itself, so that large cohorts stay in place. */
    public double[] value(FindingCode code) {
      return found(values, code);
    }

    /** The upper limit of a quotient, row by row. */
    public double[] limit(FindingCode code) {
      return found(limits, code);
    }

    private static double[] found(Map<FindingCode, double[]> columns, FindingCode code) {
      double[] column = columns.get(code);
      if (column == null) {
        throw new IllegalArgumentException("no column for " + code.code());
      }
      return column;
    }
  }
}
