package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import java.util.Optional;
import java.util.OptionalDouble;

/** QAlb = CSF albumin / serum albumin, the measure of the barrier and of CSF flow. */
public final class AlbuminQuotient {

  static final Sample CSF = Sample.csf(Analyte.ALBUMIN);
  static final Sample SERUM = Sample.serum(Analyte.ALBUMIN);

  private final AgeLimits limits;
  private final Grounds formula;

  private AlbuminQuotient(AgeLimits limits, Grounds formula) {
    this.limits = limits;
    this.formula = formula;
  }

  /** The quotient and its age limits under some facts. */
  public static AlbuminQuotient of(Facts facts) {
    return new AlbuminQuotient(AgeLimits.of(facts), facts.grounds("albumin-quotient.formula"));
  }

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    Inputs inputs = inputs(panel);
    Optional<String> obstacle = inputs.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(
          FindingCode.ALBUMIN_QUOTIENT, formula, inputs.present(), obstacle.get());
    }
    OptionalDouble age = panel.panel().person().ageYears();
    Finding judged =
        age.isPresent()
            ? judged(inputs, age.getAsDouble(), limits.inForce(age.getAsDouble()))
                .withNote(limits.caution(age.getAsDouble()))
            : finding(inputs, formula).withDoubt("no limit because the age is unknown");
    boolean isLumbar = panel.panel().csf().site().map("lumbar"::equals).orElse(true);
    Finding lumbar =
        isLumbar ? judged : judged.withDoubt("no limit because the fluid is not lumbar");
    Finding whole = inputs.doubt().map(lumbar::withDoubt).orElse(lumbar);
    return whole.verdict() == Verdict.BELOW && age.isPresent()
        ? whole.withNote(limits.difference(age.getAsDouble(), quotient(inputs)))
        : whole;
  }

  /** The verdict of the adult rule not in force, where both are decided and differ. */
  public Optional<Verdict> dissent(CheckedPanel panel, Finding inForce) {
    OptionalDouble age = panel.panel().person().ageYears();
    if (age.isEmpty() || !limits.isAdult(age.getAsDouble()) || !inForce.verdict().isDecided()) {
      return Optional.empty();
    }
    Verdict other = judged(inputs(panel), age.getAsDouble(), limits.alternative()).verdict();
    return other.isDecided() && other != inForce.verdict() ? Optional.of(other) : Optional.empty();
  }

  /** The age limits in force. */
  public AgeLimits limits() {
    return limits;
  }

  private Finding judged(Inputs inputs, double age, AgeLimit rule) {
    Finding finding = finding(inputs, formula.and(rule.grounds()));
    Limits at = rule.at(age);
    return finding.withVerdict(at.judge(quotient(inputs)), at, Optional.of(rule.rule()));
  }

  private static Finding finding(Inputs inputs, Grounds grounds) {
    return Finding.of(FindingCode.ALBUMIN_QUOTIENT, quotient(inputs), grounds, inputs.present());
  }

  static Inputs inputs(CheckedPanel panel) {
    return Inputs.of(panel, CSF, SERUM).dividingBy(SERUM);
  }

  static Interval quotient(Inputs inputs) {
    return inputs.quotient(CSF, SERUM);
  }
}
