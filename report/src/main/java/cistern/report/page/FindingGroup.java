package cistern.report.page;

import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
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
  SERUM("Measured in blood alone"),
  BLOOD("Without the blood");

  private final String heading;

  FindingGroup(String heading) {
    this.heading = heading;
  }

  String heading() {
    return heading;
  }

  /** Whether its findings tell whether antibody is made inside the CNS. */
  boolean isOfAntibody() {
    return switch (this) {
      case IGG, IGA, IGM, LIGHT_CHAINS -> true;
      case BARRIER, ANTIBODIES, FLUID, SERUM, BLOOD -> false;
    };
  }

  List<FindingCode> codes() {
    return Arrays.stream(FindingCode.values()).filter(c -> of(c) == this).toList();
  }

  static FindingGroup of(FindingCode code) {
    return switch (code.kind()) {
      case QUOTIENT, FRACTION, LOCAL, INDEX, RATE -> ofProtein(code.analyte());
      case ANTIBODY_INDEX, REACTION -> ANTIBODIES;
      case RATIO, CSF -> FLUID;
      case SERUM -> SERUM;
      case CORRECTED -> BLOOD;
    };
  }

  private static FindingGroup ofProtein(Analyte analyte) {
    return switch (analyte.family()) {
      case IMMUNOGLOBULIN -> analyte == Analyte.IGG ? IGG : analyte == Analyte.IGA ? IGA : IGM;
      case LIGHT_CHAIN -> LIGHT_CHAINS;
      case PROTEIN, METABOLITE, CELLS, FRACTION, SPECIFIC_ANTIBODY -> BARRIER;
    };
  }
}
