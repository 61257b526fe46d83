package cistern.fluid;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.Limits;
import cistern.panel.CheckedPanel;
import java.util.List;

/** Every rule of this package under one set of facts. */
public final class FluidFindings {

  private final GlucoseRatio glucose;
  private final Measured lactate;
  private final TotalProtein protein;
  private final Measured leukocytes;
  private final Measured erythrocytes;
  private final Measured myelin;

  private FluidFindings(Facts facts) {
    glucose = GlucoseRatio.of(facts);
    lactate = Measured.lactate(facts);
    protein = TotalProtein.of(facts);
    leukocytes = Measured.leukocytes(facts);
    erythrocytes = Measured.erythrocytes(facts);
    myelin = Measured.myelinBasicProtein(facts);
  }

  /** The rules under some facts. */
  public static FluidFindings of(Facts facts) {
    return new FluidFindings(facts);
  }

  /** The limits of the leukocytes. */
  public Limits leukocyteLimits() {
    return leukocytes.limits();
  }

  /** The limits of the total protein of this person. */
  public Limits proteinLimits(CheckedPanel panel) {
    return protein.limits(panel.panel().person().ageYears());
  }

  /** The findings of a panel. */
  public List<Finding> interpret(CheckedPanel panel) {
    return List.of(
        glucose.interpret(panel),
        lactate.interpret(panel),
        protein.interpret(panel),
        leukocytes.interpret(panel),
        erythrocytes.interpret(panel),
        myelin.interpret(panel));
  }
}
