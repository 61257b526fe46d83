package cistern.measurement;

/** The one unit in which the medicine holds each kind of value. */
public enum CanonicalUnit {
  /** Mass concentration of proteins. */
  MG_PER_L("mg/L"),
  /** Substance concentration of glucose and lactate. */
  MMOL_PER_L("mmol/L"),
  /** Mass concentration of traces. */
  NG_PER_ML("ng/mL"),
  /** Mass concentration of traces in blood; the same number as pg/mL. */
  NG_PER_L("ng/L"),
  /** Cells. */
  PER_UL("/uL"),
  /** A fraction from 0 to 1, a quotient, an index, a count. */
  ONE("1"),
  /** A rate of synthesis. */
  MG_PER_DAY("mg/d"),
  /** Any one unit that is the same in both fluids. */
  ARBITRARY("arbitrary");

  private final String ucum;

  CanonicalUnit(String ucum) {
    this.ucum = ucum;
  }

  /** The unit as UCUM writes it. */
  public String ucum() {
    return ucum;
  }
}
