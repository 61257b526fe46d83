package cistern.report.wording;

import cistern.barrier.AgeLimits;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.fluid.TotalProtein;
import cistern.measurement.CanonicalUnit;
import cistern.measurement.Interval;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleFunction;

/** One finding in the words of a table: value, unit, interval, limit. */
public final class ValueWords {

  private static final String NONE = "–";
  private static final double PER_CENT = 100;

  private ValueWords() {}

  /** The value without its unit; with enough digits to tell it from its limit. */
  public static String value(Finding finding) {
    FindingCode code = finding.code();
    if (finding.number().isPresent()) {
      return besideLimit(finding, finding.number().getAsDouble());
    }
    return finding.value().map(bounds -> between(code, bounds)).orElse(NONE);
  }

  private static String between(FindingCode code, Interval bounds) {
    if (Double.isInfinite(bounds.upper())) {
      return "> " + Printed.of(code, bounds.lower());
    }
    String upper = Printed.of(code, bounds.upper());
    if (bounds.lower() == bounds.upper()) {
      return upper;
    }
    return bounds.lower() <= 0 ? "< " + upper : Printed.of(code, bounds.lower()) + " to " + upper;
  }

  /** A measured number in its canonical unit, without the unit; censored with its sign. */
  public static String reported(Interval value) {
    return signed(value, Printed::significant);
  }

  /** A measured share in whole per cent, without the sign; censored with its sign. */
  public static String percent(Interval value) {
    return signed(value, share -> Printed.decimals(share * PER_CENT, 0));
  }

  private static String signed(Interval value, DoubleFunction<String> printed) {
    if (Double.isInfinite(value.upper())) {
      return "> " + printed.apply(value.lower());
    }
    return (value.censored() ? "< " : "") + printed.apply(value.upper());
  }

  private static String besideLimit(Finding finding, double value) {
    Optional<Threshold> cut = finding.limits().above().or(() -> finding.limits().within());
    return cut.map(c -> Printed.besideLimit(finding.code(), value, c.at()))
        .orElseGet(() -> Printed.of(finding.code(), value));
  }

  /** The unit as a reader writes it; empty where the number stands alone. */
  public static String unit(FindingCode code) {
    return switch (code.print()) {
      case QUOTIENT -> "× 10⁻³";
      case FRACTION, INDEX -> "";
      case RATE, CONCENTRATION, COUNT ->
          code.unit() == CanonicalUnit.ONE ? "" : code.unit().ucum().replace("/uL", "/µL");
    };
  }

  /** The value with its unit. */
  public static String valueWithUnit(Finding finding) {
    String unit = finding.hasValue() ? unit(finding.code()) : "";
    return unit.isEmpty() ? value(finding) : value(finding) + " " + unit;
  }

  /** The 95 % interval without a unit; empty when none is known. */
  public static String interval(Finding finding) {
    return finding
        .uncertainty()
        .interval95()
        .map(
            i ->
                Printed.of(finding.code(), i.lower()).replace(" %", "")
                    + " to "
                    + Printed.of(finding.code(), i.upper()))
        .orElse("");
  }

  /** What counts as within, without a unit. */
  public static String limit(Finding finding) {
    FindingCode code = finding.code();
    Limits limits = finding.limits();
    Optional<String> lower = limits.within().map(c -> Printed.of(code, c.at()));
    Optional<String> upper = limits.above().map(c -> Printed.of(code, c.at()));
    if (lower.isPresent() && upper.isPresent()) {
      return lower.get() + " to " + upper.get();
    }
    return upper
        .map(u -> (limits.above().map(Threshold::inclusive).orElse(false) ? "< " : "≤ ") + u)
        .or(() -> lower.map(l -> "≥ " + l))
        .orElse(NONE);
  }

  /**
   * The rule that a limit follows, as it is read; a rule named after its authors keeps the name.
   */
  public static Optional<String> rule(Finding finding) {
    return finding
        .limitRule()
        .map(
            rule ->
                AgeLimits.toWords(rule)
                    .map(words -> "by age, " + words)
                    .orElseGet(() -> named(rule)));
  }

  private static String named(String rule) {
    return switch (rule) {
      case TotalProtein.BY_AGE -> "by age";
      case TotalProtein.FIXED -> "the same at every age";
      default ->
          rule.substring(0, 1).toUpperCase(Locale.ROOT) + rule.substring(1).replace('-', ' ');
    };
  }

  /** The grey zone without a unit, if there is one. */
  public static Optional<String> greyZone(Finding finding) {
    FindingCode code = finding.code();
    Limits limits = finding.limits();
    if (limits.borderline().isEmpty() || limits.above().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        Printed.of(code, limits.borderline().get().at())
            + " to "
            + Printed.of(code, limits.above().get().at()));
  }
}
