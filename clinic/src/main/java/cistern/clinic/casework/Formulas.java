package cistern.clinic.casework;

import cistern.finding.FindingCode;

/** Every formula in words, as the medicine computes it. */
final class Formulas {

  private Formulas() {}

  static String of(FindingCode code) {
    return switch (code) {
      case ALBUMIN_QUOTIENT,
          IGG_QUOTIENT,
          IGA_QUOTIENT,
          IGM_QUOTIENT,
          KAPPA_QUOTIENT,
          LAMBDA_QUOTIENT ->
          "concentration in CSF ÷ concentration in serum";
      case IGG_FRACTION, IGA_FRACTION, IGM_FRACTION, KAPPA_FRACTION ->
          "1 − (limit of the quotient at this albumin quotient ÷ quotient); 0 when within";
      case IGG_LOCAL, IGA_LOCAL, IGM_LOCAL, KAPPA_LOCAL ->
          "(quotient − its limit at this albumin quotient) × concentration in serum; 0 when within";
      case IGG_INDEX, IGA_INDEX, IGM_INDEX, LAMBDA_INDEX, KAPPA_INDEX ->
          "quotient ÷ albumin quotient";
      case IGG_SYNTHESIS_RATE ->
          "((IgG in CSF − IgG in serum ÷ constant) − (albumin in CSF − albumin in serum ÷ constant)"
              + " × (IgG in serum ÷ albumin in serum) × ratio of molar masses) × daily volume";
      case MEASLES_ANTIBODY_INDEX,
          RUBELLA_ANTIBODY_INDEX,
          VARICELLA_ZOSTER_ANTIBODY_INDEX,
          BORRELIA_ANTIBODY_INDEX ->
          "quotient of the specific antibody ÷ the smaller of the IgG quotient and its limit";
      case MRZ_REACTION -> "how many of the measles, rubella and zoster indices are above";
      case GLUCOSE_RATIO -> "glucose in CSF ÷ glucose in serum";
      case LACTATE, TOTAL_PROTEIN, LEUKOCYTES, ERYTHROCYTES, MYELIN_BASIC_PROTEIN ->
          "as measured in CSF";
      case LEUKOCYTES_CORRECTED ->
          "leukocytes in CSF − those that came with the blood, by the blood's own ratio";
      case TOTAL_PROTEIN_CORRECTED,
          IGG_CORRECTED,
          IGA_CORRECTED,
          IGM_CORRECTED,
          ALBUMIN_CORRECTED ->
          "concentration in CSF − share of plasma in it × concentration in serum";
    };
  }
}
