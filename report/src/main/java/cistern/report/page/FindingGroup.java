package cistern.report.page;

import cistern.finding.FindingCode;
import java.util.Arrays;
import java.util.List;

/** Findings that a specialist reads together, in the order in which they are read. */
enum FindingGroup {
  BARRIER("Barrier"),
  IGG("IgG"),
  IGA("IgA"),
  IGM("IgM"),
  LIGHT_CHAINS("Free light chains"),
  ANTIBODIES("Antibody indices"),
  FLUID("Cells and chemistry"),
  BLOOD("Without the blood");

  private final String heading;

  FindingGroup(String heading) {
    this.heading = heading;
  }

  String heading() {
    return heading;
  }

  List<FindingCode> codes() {
    return Arrays.stream(FindingCode.values()).filter(c -> of(c) == this).toList();
  }

  static FindingGroup of(FindingCode code) {
    return switch (code) {
      case ALBUMIN_QUOTIENT -> BARRIER;
      case IGG_QUOTIENT, IGG_FRACTION, IGG_LOCAL, IGG_INDEX, IGG_SYNTHESIS_RATE -> IGG;
      case IGA_QUOTIENT, IGA_FRACTION, IGA_LOCAL, IGA_INDEX -> IGA;
      case IGM_QUOTIENT, IGM_FRACTION, IGM_LOCAL, IGM_INDEX -> IGM;
      case KAPPA_QUOTIENT,
          KAPPA_FRACTION,
          KAPPA_LOCAL,
          KAPPA_INDEX,
          LAMBDA_QUOTIENT,
          LAMBDA_INDEX ->
          LIGHT_CHAINS;
      case MEASLES_ANTIBODY_INDEX,
          RUBELLA_ANTIBODY_INDEX,
          VARICELLA_ZOSTER_ANTIBODY_INDEX,
          BORRELIA_ANTIBODY_INDEX,
          MRZ_REACTION ->
          ANTIBODIES;
      case GLUCOSE_RATIO, LACTATE, TOTAL_PROTEIN, LEUKOCYTES, ERYTHROCYTES, MYELIN_BASIC_PROTEIN ->
          FLUID;
      case LEUKOCYTES_CORRECTED,
          TOTAL_PROTEIN_CORRECTED,
          IGG_CORRECTED,
          IGA_CORRECTED,
          IGM_CORRECTED,
          ALBUMIN_CORRECTED ->
          BLOOD;
    };
  }
}
