package cistern.clinic.casework;

import cistern.finding.FindingCode;

/** Every formula in words, as the medicine computes it. */
final class Formulas {

  private Formulas() {}

  static String of(FindingCode code) {
    return switch (code.kind()) {
      case QUOTIENT -> "concentration in CSF ÷ concentration in serum";
      case FRACTION ->
          "1 − (limit of the quotient at this albumin quotient ÷ quotient); 0 when within";
      case LOCAL ->
          "(quotient − its limit at this albumin quotient) × concentration in serum; 0 when within";
      case INDEX -> "quotient ÷ albumin quotient";
      case RATE ->
          "((IgG in CSF − IgG in serum ÷ constant) − (albumin in CSF − albumin in serum ÷ constant)"
              + " × (IgG in serum ÷ albumin in serum) × ratio of molar masses) × daily volume";
      case ANTIBODY_INDEX ->
          "quotient of the specific antibody ÷ the smaller of the IgG quotient and its limit";
      case REACTION -> "how many of the measles, rubella and zoster indices are above";
      case RATIO -> "glucose in CSF ÷ glucose in serum";
      case CSF -> "as measured in CSF";
      case SERUM -> "as measured in serum or plasma";
      case CORRECTED ->
          code == FindingCode.LEUKOCYTES_CORRECTED
              ? "leukocytes in CSF − those that came with the blood, by the blood's own ratio"
              : "concentration in CSF − share of plasma in it × concentration in serum";
    };
  }
}
