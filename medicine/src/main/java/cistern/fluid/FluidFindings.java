package cistern.fluid;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.finding.UnitProfile;
import cistern.finding.Verdict;
import cistern.finding.WrittenUnit;
import cistern.panel.CheckedPanel;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Every rule of this package under one set of facts. */
public final class FluidFindings {

  private static final String ADULT = "albumin-quotient.adult-age";

  private final Facts facts;
  private final GlucoseRatio glucose;
  private final Measured lactate;
  private final TotalProtein protein;
  private final Measured leukocytes;
  private final Measured erythrocytes;
  private final Measured myelin;
  private final NeurofilamentLight neurofilament;

  private FluidFindings(Facts facts) {
    this.facts = facts;
    glucose = GlucoseRatio.of(facts);
    lactate = Measured.lactate(facts);
    protein = TotalProtein.of(facts);
    leukocytes = Measured.leukocytes(facts);
    erythrocytes = Measured.erythrocytes(facts);
    myelin = Measured.myelinBasicProtein(facts);
    neurofilament = NeurofilamentLight.of(facts);
  }

  /** The rules under some facts. */
  public static FluidFindings of(Facts facts) {
    return new FluidFindings(facts);
  }

  /** The limits of the leukocytes of this person. */
  public Limits leukocyteLimits(CheckedPanel panel) {
    return Infancy.of(panel.panel().person(), facts)
        .map(part -> part.leukocytes(facts))
        .orElse(leukocytes.limits());
  }

  /** The limits of the total protein of this person. */
  public Limits proteinLimits(CheckedPanel panel) {
    return protein.limits(panel.panel().person());
  }

  /** The findings of a panel. */
  public List<Finding> interpret(CheckedPanel panel) {
    return List.of(
        ratio(panel),
        lactate(panel),
        protein.interpret(panel),
        leukocytes(panel),
        erythrocytes.interpret(panel),
        myelin.interpret(panel),
        neurofilament.interpret(panel));
  }

  private Finding leukocytes(CheckedPanel panel) {
    return Infancy.of(panel.panel().person(), facts)
        .map(part -> facts.grounds(part.key("leukocytes.upper")))
        .map(grounds -> leukocytes.interpret(panel, leukocyteLimits(panel), grounds))
        .orElseGet(() -> leukocytes.interpret(panel));
  }

  private Finding ratio(CheckedPanel panel) {
    Finding ratio = glucose.interpret(panel);
    boolean isInfant = Infancy.of(panel.panel().person(), facts).isPresent();
    return isInfant && ratio.hasValue()
        ? ratio
            .withVerdict(Verdict.UNDETERMINED, Limits.NONE, Optional.empty())
            .withNote("no limit of the ratio in the first 90 days")
        : byAge(ratio, panel, facts.word("glucose-ratio.by-age"));
  }

  /** In children, what is published by age stands beside a limit that knows none. */
  private Finding byAge(Finding finding, CheckedPanel panel, String published) {
    OptionalDouble age = panel.panel().person().ageYears();
    return finding.hasValue() && age.isPresent() && age.getAsDouble() < facts.number(ADULT)
        ? finding.withNote(published)
        : finding;
  }

  private String lactateByAge() {
    return "published by age, the 5th centile runs from %s to %s and the 95th from about %s to %s %s (Leen 2012)"
        .formatted(
            lactate("fifth.lowest", 2),
            lactate("fifth.highest", 2),
            lactate("ninety-fifth.lowest", 1),
            lactate("ninety-fifth.highest", 1),
            lactateUnit().map(WrittenUnit::text).orElse(FindingCode.LACTATE.unit().ucum()));
  }

  private String lactate(String centile, int places) {
    double held = facts.number("lactate.by-age." + centile);
    return WrittenUnit.number(
        lactateUnit(), unit -> unit.limit(held), () -> Printed.decimals(held, places));
  }

  private Optional<WrittenUnit> lactateUnit() {
    return UnitProfile.of(facts).find(FindingCode.LACTATE);
  }

  /** In the first 90 days a value between the two cuts has no verdict. */
  private Finding lactate(CheckedPanel panel) {
    if (Infancy.of(panel.panel().person(), facts).isEmpty()) {
      return byAge(lactate.interpret(panel), panel, lactateByAge());
    }
    Finding judged =
        lactate.interpret(
            panel,
            Limits.grey(
                Threshold.over(facts.number("infant.lactate.within.to")),
                Threshold.from(facts.number("infant.lactate.above.from"))));
    return judged.verdict() == Verdict.BORDERLINE
        ? judged.withDoubt("no verdict between the two cuts of the first 90 days")
        : judged;
  }
}
