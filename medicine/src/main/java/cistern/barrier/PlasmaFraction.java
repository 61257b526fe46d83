package cistern.barrier;

import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;

/**
 * The share of plasma in CSF that blood brought with it: p = (RBC_csf/RBC_blood)·(1 − haematocrit),
 * one unit for the cells.
 */
final class PlasmaFraction {

  static final Sample CSF_CELLS = Sample.csf(Analyte.ERYTHROCYTES);
  static final Sample BLOOD_CELLS = Sample.blood(Analyte.ERYTHROCYTES);
  static final Sample HAEMATOCRIT = Sample.blood(Analyte.HEMATOCRIT);

  private PlasmaFraction() {}

  /** The samples that it needs. */
  static Inputs inputs(CheckedPanel panel) {
    return Inputs.of(panel, CSF_CELLS, BLOOD_CELLS, HAEMATOCRIT).dividingBy(BLOOD_CELLS);
  }

  /** The fraction, 0 to 1; all its inputs were measured. */
  static Interval of(Inputs inputs) {
    Interval cells = inputs.quotient(CSF_CELLS, BLOOD_CELLS);
    Interval haematocrit = inputs.interval(HAEMATOCRIT);
    double most = Math.max(0, 1 - haematocrit.lower());
    double least = Math.max(0, 1 - haematocrit.upper());
    return new Interval(
        cells.lower() * least,
        cells.upper() == 0 ? 0 : cells.upper() * most,
        cells.censored() || haematocrit.censored());
  }
}
