package cistern.finding;

import cistern.fact.Grounds;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One derived quantity with its verdict and everything it rests on.
 *
 * @param code what it is
 * @param value in the unit of the code, not rounded; none when an input is missing or unusable
 * @param limits the limits it was judged by, where they are one number
 * @param limitRule the published rule behind the limits, if any
 * @param verdict how the value stands to the limits
 * @param uncertainty what measurement error leaves open
 * @param grounds weakest status and all sources
 * @param inputs the samples that went into value or limit
 * @param note why there is no value or no verdict, or what to keep in mind; may be empty
 * @param unit in which papers write it, where it is another than that of the code
 */
public record Finding(
    FindingCode code,
    Optional<Interval> value,
    Limits limits,
    Optional<String> limitRule,
    Verdict verdict,
    Uncertainty uncertainty,
    Grounds grounds,
    List<Sample> inputs,
    String note,
    Optional<WrittenUnit> unit) {

  /** Copies the inputs. */
  public Finding {
    inputs = List.copyOf(inputs);
  }

  /** A finding that cannot be computed, and why. */
  public static Finding withoutValue(
      FindingCode code, Grounds grounds, List<Sample> inputs, String reason) {
    return new Finding(
        code,
        Optional.empty(),
        Limits.NONE,
        Optional.empty(),
        Verdict.UNDETERMINED,
        Uncertainty.NONE,
        grounds,
        inputs,
        reason,
        Optional.empty());
  }

  /** A finding with a value that has not been judged. */
  public static Finding of(FindingCode code, Interval value, Grounds grounds, List<Sample> inputs) {
    return new Finding(
        code,
        Optional.of(value),
        Limits.NONE,
        Optional.empty(),
        Verdict.UNDETERMINED,
        Uncertainty.NONE,
        grounds,
        inputs,
        "",
        Optional.empty());
  }

  /** This finding judged by limits. */
  public Finding withVerdict(Verdict judged, Limits by, Optional<String> rule) {
    return new Finding(code, value, by, rule, judged, uncertainty, grounds, inputs, note, unit);
  }

  /** This finding with a note added to what it already says. */
  public Finding withNote(String more) {
    String both = note.isEmpty() || more.isEmpty() ? note + more : note + "; " + more;
    return new Finding(
        code, value, limits, limitRule, verdict, uncertainty, grounds, inputs, both, unit);
  }

  /** This finding without a verdict, and why; the value stays. */
  public Finding withDoubt(String reason) {
    return new Finding(
            code,
            value,
            limits,
            limitRule,
            Verdict.UNDETERMINED,
            uncertainty,
            grounds,
            inputs,
            note,
            unit)
        .withNote(reason);
  }

  /** This finding with what measurement error leaves open. */
  public Finding withUncertainty(Uncertainty measured) {
    return new Finding(
        code, value, limits, limitRule, verdict, measured, grounds, inputs, note, unit);
  }

  /** This finding as papers write it where a laboratory or a house has units of its own. */
  public Finding withUnits(UnitProfile profile) {
    return new Finding(
        code,
        value,
        limits,
        limitRule,
        verdict,
        uncertainty,
        grounds,
        inputs,
        note,
        profile.find(code));
  }

  /** Whether any value or bound could be computed. */
  public boolean hasValue() {
    return value.isPresent();
  }

  /** The value, where it is known exactly. */
  public OptionalDouble number() {
    return value
        .filter(Interval::isExact)
        .map(v -> OptionalDouble.of(v.exactly()))
        .orElse(OptionalDouble.empty());
  }

  /** Whether the verdict is {@code above}. */
  public boolean isAbove() {
    return verdict == Verdict.ABOVE;
  }

  /** Whether it belongs on a page: it has a value, or what it is about was measured in a fluid. */
  public boolean isAsked() {
    return hasValue() || inputs.stream().anyMatch(s -> code.subject().contains(s.analyte()));
  }
}
