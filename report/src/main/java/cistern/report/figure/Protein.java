package cistern.report.figure;

import cistern.finding.FindingCode;
import cistern.measurement.Analyte;

/** A protein whose quotient is drawn against the albumin quotient. */
public enum Protein {
  IGG("IgG", Analyte.IGG, FindingCode.IGG_QUOTIENT, FindingCode.IGG_FRACTION),
  IGA("IgA", Analyte.IGA, FindingCode.IGA_QUOTIENT, FindingCode.IGA_FRACTION),
  IGM("IgM", Analyte.IGM, FindingCode.IGM_QUOTIENT, FindingCode.IGM_FRACTION),
  KAPPA("κ", Analyte.KAPPA, FindingCode.KAPPA_QUOTIENT, FindingCode.KAPPA_FRACTION);

  private final String term;
  private final Analyte analyte;
  private final FindingCode quotient;
  private final FindingCode fraction;

  Protein(String term, Analyte analyte, FindingCode quotient, FindingCode fraction) {
    this.term = term;
    this.analyte = analyte;
    this.quotient = quotient;
    this.fraction = fraction;
  }

  /** The name on labels. */
  public String term() {
    return term;
  }

  /** What is measured in both fluids. */
  public Analyte analyte() {
    return analyte;
  }

  /** The finding that is drawn upwards. */
  public FindingCode quotient() {
    return quotient;
  }

  /** The finding whose share is written at the point. */
  public FindingCode fraction() {
    return fraction;
  }
}
