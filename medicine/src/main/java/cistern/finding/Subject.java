package cistern.finding;

import cistern.measurement.Analyte;
import java.util.Set;

/** The analytes that a finding is about, beside those it only compares with. */
final class Subject {

  private Subject() {}

  static Set<Analyte> of(FindingCode code) {
    return switch (code) {
      case ALBUMIN_QUOTIENT -> Set.of(Analyte.ALBUMIN);
      case IGG_QUOTIENT, IGG_FRACTION, IGG_LOCAL, IGG_INDEX, IGG_SYNTHESIS_RATE ->
          Set.of(Analyte.IGG);
      case IGA_QUOTIENT, IGA_FRACTION, IGA_LOCAL, IGA_INDEX -> Set.of(Analyte.IGA);
      case IGM_QUOTIENT, IGM_FRACTION, IGM_LOCAL, IGM_INDEX -> Set.of(Analyte.IGM);
      case KAPPA_QUOTIENT, KAPPA_FRACTION, KAPPA_LOCAL, KAPPA_INDEX -> Set.of(Analyte.KAPPA);
      case LAMBDA_QUOTIENT, LAMBDA_INDEX -> Set.of(Analyte.LAMBDA);
      case MEASLES_ANTIBODY_INDEX -> Set.of(Analyte.MEASLES_IGG);
      case RUBELLA_ANTIBODY_INDEX -> Set.of(Analyte.RUBELLA_IGG);
      case VARICELLA_ZOSTER_ANTIBODY_INDEX -> Set.of(Analyte.VARICELLA_ZOSTER_IGG);
      case BORRELIA_ANTIBODY_INDEX -> Set.of(Analyte.BORRELIA_IGG);
      case MRZ_REACTION ->
          Set.of(Analyte.MEASLES_IGG, Analyte.RUBELLA_IGG, Analyte.VARICELLA_ZOSTER_IGG);
      case GLUCOSE_RATIO -> Set.of(Analyte.GLUCOSE);
      case LACTATE -> Set.of(Analyte.LACTATE);
      case TOTAL_PROTEIN -> Set.of(Analyte.TOTAL_PROTEIN);
      case LEUKOCYTES -> Set.of(Analyte.LEUKOCYTES);
      case ERYTHROCYTES -> Set.of(Analyte.ERYTHROCYTES);
      case MYELIN_BASIC_PROTEIN -> Set.of(Analyte.MYELIN_BASIC_PROTEIN);
      case LEUKOCYTES_CORRECTED,
          TOTAL_PROTEIN_CORRECTED,
          IGG_CORRECTED,
          IGA_CORRECTED,
          IGM_CORRECTED,
          ALBUMIN_CORRECTED ->
          Set.of();
    };
  }
}
