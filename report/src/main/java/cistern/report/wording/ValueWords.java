package cistern.report.wording;

import cistern.barrier.AgeLimits;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.finding.UnitProfile;
import cistern.finding.WrittenUnit;
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
    if (finding.number().isPresent()) {
      return besideLimit(finding, finding.number().getAsDouble());
    }
    return finding.value().map(bounds -> between(finding, bounds)).orElse(NONE);
  }

  private static String between(Finding finding, Interval bounds) {
    if (Double.isInfinite(bounds.upper())) {
      return "> " + Printed.of(finding, bounds.lower());
    }
    String upper = Printed.of(finding, bounds.upper());
    if (bounds.lower() == bounds.upper()) {
      return upper;
    }
    return bounds.lower() <= 0
        ? "< " + upper
        : Printed.of(finding, bounds.lower()) + " to " + upper;
  }

  /** A measured number in the medicine's unit, without the unit; censored with its sign. */
  public static String reported(Interval value) {
    return signed(value, Printed::significant);
  }

  /** A measured number in a unit that was chosen for it, without it; censored with its sign. */
  public static String reported(Interval value, WrittenUnit unit) {
    return unit.isOfSameSize() ? reported(value) : signed(value, unit::number);
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
    return cut.map(c -> Printed.besideLimit(finding, value, c.at()))
        .orElseGet(() -> Printed.of(finding, value));
  }

  /** The unit as a reader writes it; empty where the number stands alone. */
  public static String unit(Finding finding) {
    return finding.unit().map(WrittenUnit::text).orElseGet(() -> unit(finding.code()));
  }

  /** The unit of a quantity in a profile; empty where the number stands alone. */
  public static String unit(FindingCode code, UnitProfile units) {
    return units.find(code).map(WrittenUnit::text).orElseGet(() -> unit(code));
  }

  /** The unit of the medicine as a reader writes it; empty where the number stands alone. */
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
    String unit = finding.hasValue() ? unit(finding) : "";
    return unit.isEmpty() ? value(finding) : value(finding) + " " + unit;
  }

  /** The 95 % interval without a unit; empty when none is known. */
  public static String interval(Finding finding) {
    return finding
        .uncertainty()
        .interval95()
        .map(
            i ->
                Printed.end(finding, i.lower()).replace(" %", "")
                    + " to "
                    + Printed.end(finding, i.upper()))
        .orElse("");
  }

  /** What counts as within, without a unit. */
  public static String limit(Finding finding) {
    Limits limits = finding.limits();
    Optional<String> lower = limits.within().map(c -> Printed.limit(finding, c.at()));
    Optional<String> upper = limits.above().map(c -> Printed.limit(finding, c.at()));
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
    Limits limits = finding.limits();
    if (limits.borderline().isEmpty() || limits.above().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        Printed.limit(finding, limits.borderline().get().at())
            + " to "
            + Printed.limit(finding, limits.above().get().at()));
  }
}
