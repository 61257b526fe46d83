package cistern.uncertainty;

import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import java.util.Arrays;
import java.util.List;

/**
 * A second way to every number: draws each input from its log-normal distribution and evaluates the
 * formulas of the literature on the draw. It shares no formula and no constant with the product.
 */
final class MonteCarlo {

  private static final List<FindingCode> CODES = List.of(FindingCode.values());
  private static final List<Analyte> ANALYTES = List.of(Analyte.values());
  private static final List<Compartment> COMPARTMENTS = List.of(Compartment.values());
  private static final int OF_ALBUMIN = ANALYTES.indexOf(Analyte.ALBUMIN);
  private static final int OF_ERYTHROCYTES = ANALYTES.indexOf(Analyte.ERYTHROCYTES);
  private static final int OF_GLUCOSE = ANALYTES.indexOf(Analyte.GLUCOSE);
  private static final int OF_HEMATOCRIT = ANALYTES.indexOf(Analyte.HEMATOCRIT);
  private static final int OF_IGA = ANALYTES.indexOf(Analyte.IGA);
  private static final int OF_IGG = ANALYTES.indexOf(Analyte.IGG);
  private static final int OF_IGM = ANALYTES.indexOf(Analyte.IGM);
  private static final int OF_KAPPA = ANALYTES.indexOf(Analyte.KAPPA);
  private static final int OF_LACTATE = ANALYTES.indexOf(Analyte.LACTATE);
  private static final int OF_LAMBDA = ANALYTES.indexOf(Analyte.LAMBDA);
  private static final int OF_LEUKOCYTES = ANALYTES.indexOf(Analyte.LEUKOCYTES);
  private static final int OF_MEASLES_IGG = ANALYTES.indexOf(Analyte.MEASLES_IGG);
  private static final int OF_MYELIN_BASIC_PROTEIN = ANALYTES.indexOf(Analyte.MYELIN_BASIC_PROTEIN);
  private static final int OF_NEUROFILAMENT_LIGHT = ANALYTES.indexOf(Analyte.NEUROFILAMENT_LIGHT);
  private static final int OF_TOTAL_PROTEIN = ANALYTES.indexOf(Analyte.TOTAL_PROTEIN);

  private static final int ALBUMIN_CORRECTED = at(FindingCode.ALBUMIN_CORRECTED);
  private static final int ALBUMIN_QUOTIENT = at(FindingCode.ALBUMIN_QUOTIENT);
  private static final int ERYTHROCYTES = at(FindingCode.ERYTHROCYTES);
  private static final int GLUCOSE_RATIO = at(FindingCode.GLUCOSE_RATIO);
  private static final int IGA_CORRECTED = at(FindingCode.IGA_CORRECTED);
  private static final int IGA_INDEX = at(FindingCode.IGA_INDEX);
  private static final int IGG_CORRECTED = at(FindingCode.IGG_CORRECTED);
  private static final int IGG_INDEX = at(FindingCode.IGG_INDEX);
  private static final int IGG_QUOTIENT = at(FindingCode.IGG_QUOTIENT);
  private static final int IGG_SYNTHESIS_RATE = at(FindingCode.IGG_SYNTHESIS_RATE);
  private static final int IGM_CORRECTED = at(FindingCode.IGM_CORRECTED);
  private static final int IGM_INDEX = at(FindingCode.IGM_INDEX);
  private static final int KAPPA_INDEX = at(FindingCode.KAPPA_INDEX);
  private static final int LACTATE = at(FindingCode.LACTATE);
  private static final int LAMBDA_INDEX = at(FindingCode.LAMBDA_INDEX);
  private static final int LAMBDA_QUOTIENT = at(FindingCode.LAMBDA_QUOTIENT);
  private static final int LEUKOCYTES = at(FindingCode.LEUKOCYTES);
  private static final int LEUKOCYTES_CORRECTED = at(FindingCode.LEUKOCYTES_CORRECTED);
  private static final int MEASLES_ANTIBODY_INDEX = at(FindingCode.MEASLES_ANTIBODY_INDEX);
  private static final int MRZ_REACTION = at(FindingCode.MRZ_REACTION);
  private static final int MYELIN_BASIC_PROTEIN = at(FindingCode.MYELIN_BASIC_PROTEIN);
  private static final int NEUROFILAMENT_LIGHT = at(FindingCode.NEUROFILAMENT_LIGHT);
  private static final int TOTAL_PROTEIN = at(FindingCode.TOTAL_PROTEIN);
  private static final int TOTAL_PROTEIN_CORRECTED = at(FindingCode.TOTAL_PROTEIN_CORRECTED);

  /** a/b, b², c of Qlim: Reiber 1994 for IgG, IgA, IgM; Reiber 2019 for κ. */
  private static final double[][] QLIM = {
    {0.93, 6e-6, 1.7e-3}, {0.77, 23e-6, 3.1e-3}, {0.67, 120e-6, 7.1e-3}, {3.27, 33e-6, 8.2e-3}
  };

  /** The same for Qlow; none for κ. */
  private static final double[][] QLOW = {
    {0.33, 2e-6, 0.3e-3}, {0.17, 74e-6, 1.3e-3}, {0.04, 442e-6, 0.82e-3}, {0, 0, 0}
  };

  /** Bornhorst 2022 by decades from 20; before it Simrén 2022. */
  private static final double[] NEUROFILAMENT = {10, 10, 8.4, 11.4, 15.4, 20.8, 28, 37.9, 51.2};

  private static final int[] SYNTHESISED = {OF_IGG, OF_IGA, OF_IGM, OF_KAPPA};

  private final double[] median = new double[3 * ANALYTES.size()];
  private final double[] sigma = new double[3 * ANALYTES.size()];
  private final double[] drawn = new double[3 * ANALYTES.size()];
  private final double ageYears;

  /** The quantities of the last draw, by the order of the codes; NaN where there is none. */
  final double[] values = new double[CODES.size()];

  /** Whether each lies over its limit. */
  final boolean[] isAbove = new boolean[CODES.size()];

  /** The verdict on each, where it has a limit. */
  final Verdict[] verdicts = new Verdict[CODES.size()];

  MonteCarlo(Panel panel) {
    Arrays.fill(median, Double.NaN);
    for (Measurement m : panel.results().values()) {
      double cv = m.cv().orElse(m.sample().analyte().isConcentration() ? 0.05 : 0);
      median[at(m.sample())] = m.value().exactly();
      sigma[at(m.sample())] = Math.sqrt(Math.log(1 + cv * cv));
    }
    ageYears = panel.person().ageYears().orElse(Double.NaN);
  }

  /** The place of a code among the values of a draw. */
  static int at(FindingCode code) {
    return CODES.indexOf(code);
  }

  static int inputs() {
    return 3 * ANALYTES.size();
  }

  private static int at(Sample sample) {
    return COMPARTMENTS.indexOf(sample.in()) * ANALYTES.size() + ANALYTES.indexOf(sample.analyte());
  }

  private double csf(int analyte) {
    return drawn[analyte];
  }

  private double serum(int analyte) {
    return drawn[ANALYTES.size() + analyte];
  }

  private double blood(int analyte) {
    return drawn[2 * ANALYTES.size() + analyte];
  }

  private double quotient(int analyte) {
    return csf(analyte) / serum(analyte);
  }

  private void set(int code, double value, boolean above) {
    set(code, value, above, Verdict.WITHIN);
  }

  private void set(int code, double value, boolean above, Verdict otherwise) {
    values[code] = value;
    isAbove[code] = above;
    verdicts[code] = above ? Verdict.ABOVE : otherwise;
  }

  private static Verdict grey(double value, double from) {
    return value >= from ? Verdict.BORDERLINE : Verdict.WITHIN;
  }

  private static Verdict low(double value, double under) {
    return value < under ? Verdict.BELOW : Verdict.WITHIN;
  }

  /** Evaluates everything on one draw of standard normal numbers, one for each input. */
  void draw(double[] normals, double stretch) {
    for (int i = 0; i < drawn.length; i++) {
      drawn[i] = sigma[i] == 0 ? median[i] : median[i] * Math.exp(stretch * sigma[i] * normals[i]);
    }
    barrier();
    antibodies();
    fluid();
    corrected();
  }

  static double qlim(int protein, double albumin) {
    return hyperbola(QLIM[protein], albumin);
  }

  private static double hyperbola(double[] c, double albumin) {
    return c[0] * Math.sqrt(albumin * albumin + c[1]) - c[2];
  }

  private void barrier() {
    double albumin = quotient(OF_ALBUMIN);
    set(ALBUMIN_QUOTIENT, albumin, albumin > (4 + ageYears / 15) / 1000);
    for (int p = 0; p < SYNTHESISED.length; p++) {
      int analyte = SYNTHESISED[p];
      double q = quotient(analyte);
      double limit = qlim(p, albumin);
      boolean above = q > limit;
      int code = IGG_QUOTIENT + p;
      set(code, q, above, low(q, hyperbola(QLOW[p], albumin)));
      set(code + 5, above ? 1 - limit / q : 0, above);
      set(code + 9, above ? csf(analyte) - limit * serum(analyte) : 0, above);
    }
    double lambda = quotient(OF_LAMBDA);
    double igg = quotient(OF_IGG) / albumin;
    double kappa = quotient(OF_KAPPA) / albumin;
    set(LAMBDA_QUOTIENT, lambda, false);
    set(IGG_INDEX, igg, igg > 0.7, grey(igg, 0.6));
    set(IGA_INDEX, quotient(OF_IGA) / albumin, false);
    set(IGM_INDEX, quotient(OF_IGM) / albumin, false);
    set(LAMBDA_INDEX, lambda / albumin, false);
    set(KAPPA_INDEX, kappa, kappa >= 6.1, grey(kappa, 3.5));
    double rate =
        0.5
            * (csf(OF_IGG)
                - serum(OF_IGG) / 369
                - (csf(OF_ALBUMIN) - serum(OF_ALBUMIN) / 230)
                    * serum(OF_IGG)
                    / serum(OF_ALBUMIN)
                    * 0.43);
    set(IGG_SYNTHESIS_RATE, rate, rate > 3.3, low(rate, -9.9));
  }

  private void antibodies() {
    double explained = Math.min(quotient(OF_IGG), qlim(0, quotient(OF_ALBUMIN)));
    int count = 0;
    for (int v = 0; v < 4; v++) {
      double index = quotient(OF_MEASLES_IGG + v) / explained;
      boolean above = index >= (v == 3 ? 1.3 : 1.5);
      set(MEASLES_ANTIBODY_INDEX + v, index, above, grey(index, v == 3 ? 1 : 1.3));
      count += v < 3 && above ? 1 : 0;
    }
    set(MRZ_REACTION, count, count >= 2);
  }

  private void fluid() {
    double serum = serum(OF_GLUCOSE);
    double mgPerDl = serum * 18.0156;
    double ratio = quotient(OF_GLUCOSE);
    double limit = mgPerDl < 100 ? 0.5 : mgPerDl < 150 ? 0.4 : 0.3;
    set(GLUCOSE_RATIO, ratio, ratio > limit);
    verdicts[GLUCOSE_RATIO] = low(ratio, limit);
    above(LACTATE, OF_LACTATE, 2.7);
    above(TOTAL_PROTEIN, OF_TOTAL_PROTEIN, 500);
    double cells = csf(OF_LEUKOCYTES);
    set(LEUKOCYTES, cells, cells >= 5);
    above(ERYTHROCYTES, OF_ERYTHROCYTES, 500);
    double myelin = csf(OF_MYELIN_BASIC_PROTEIN);
    set(MYELIN_BASIC_PROTEIN, myelin, myelin >= 9, grey(myelin, 4));
    double light = serum(OF_NEUROFILAMENT_LIGHT);
    set(NEUROFILAMENT_LIGHT, light, light > NEUROFILAMENT[(int) (ageYears / 10)]);
  }

  private void above(int code, int analyte, double limit) {
    double value = csf(analyte);
    set(code, value, value > limit);
  }

  private void corrected() {
    double cells = csf(OF_ERYTHROCYTES);
    double share = cells / blood(OF_ERYTHROCYTES);
    double plasma = share * Math.max(0, 1 - blood(OF_HEMATOCRIT));
    double leukocytes =
        csf(OF_LEUKOCYTES) - (Double.isNaN(share) ? cells / 1000 : share * blood(OF_LEUKOCYTES));
    set(LEUKOCYTES_CORRECTED, Math.max(0, leukocytes), leukocytes >= 5);
    double protein =
        Double.isNaN(plasma)
            ? csf(OF_TOTAL_PROTEIN) - cells / 100
            : corrected(OF_TOTAL_PROTEIN, plasma);
    set(TOTAL_PROTEIN_CORRECTED, Math.max(0, protein), protein > 500);
    set(IGG_CORRECTED, Math.max(0, corrected(OF_IGG, plasma)), false);
    set(IGA_CORRECTED, Math.max(0, corrected(OF_IGA, plasma)), false);
    set(IGM_CORRECTED, Math.max(0, corrected(OF_IGM, plasma)), false);
    set(ALBUMIN_CORRECTED, Math.max(0, corrected(OF_ALBUMIN, plasma)), false);
  }

  private double corrected(int analyte, double plasma) {
    return csf(analyte) - plasma * serum(analyte);
  }
}
