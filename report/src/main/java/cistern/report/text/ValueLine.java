package cistern.report.text;

import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.finding.Verdict;
import cistern.measurement.Interval;
import java.util.Optional;

/** One value beside its limit, as columns of a line. */
final class ValueLine {

  private ValueLine() {}

  static String of(Finding finding, String source) {
    String line =
        "  %s %-32s %-20s %-22s %-13s %s"
            .formatted(
                mark(finding.verdict()),
                finding.code().term(),
                value(finding) + unit(finding.code()),
                limit(finding),
                finding.verdict().word(),
                source);
    return line.stripTrailing() + "\n" + beneath(finding);
  }

  private static String beneath(Finding finding) {
    String interval =
        finding
            .uncertainty()
            .interval95()
            .map(
                i ->
                    "95 %% interval %s to %s"
                        .formatted(
                            Printed.of(finding.code(), i.lower()),
                            Printed.of(finding.code(), i.upper())))
            .orElse("");
    String both =
        interval + (interval.isEmpty() || finding.note().isEmpty() ? "" : "; ") + finding.note();
    return both.isEmpty() ? "" : Wrapped.of("      ", both);
  }

  private static String mark(Verdict verdict) {
    return switch (verdict) {
      case ABOVE -> "●";
      case BELOW -> "▼";
      case WITHIN -> "○";
      case BORDERLINE -> "◐";
      case UNDETERMINED -> "◌";
    };
  }

  private static String value(Finding finding) {
    FindingCode code = finding.code();
    if (finding.number().isPresent()) {
      return nearest(finding, finding.number().getAsDouble());
    }
    return finding.value().map(bounds -> between(code, bounds)).orElse("–");
  }

  private static String between(FindingCode code, Interval bounds) {
    if (Double.isInfinite(bounds.upper())) {
      return "> " + Printed.of(code, bounds.lower());
    }
    String upper = Printed.of(code, bounds.upper());
    return bounds.lower() == 0 ? "< " + upper : Printed.of(code, bounds.lower()) + " to " + upper;
  }

  private static String nearest(Finding finding, double value) {
    Optional<Threshold> cut = finding.limits().above().or(() -> finding.limits().within());
    return cut.map(c -> Printed.besideLimit(finding.code(), value, c.at()))
        .orElse(Printed.of(finding.code(), value));
  }

  private static String unit(FindingCode code) {
    return switch (code.print()) {
      case QUOTIENT -> " × 10⁻³";
      case FRACTION, INDEX -> "";
      case RATE, CONCENTRATION, COUNT ->
          code.unit().ucum().equals("1") ? "" : " " + code.unit().ucum();
    };
  }

  private static String limit(Finding finding) {
    FindingCode code = finding.code();
    Limits limits = finding.limits();
    Optional<String> lower = limits.within().map(c -> Printed.of(code, c.at()));
    Optional<String> upper = limits.above().map(c -> Printed.of(code, c.at()));
    if (lower.isPresent() && upper.isPresent()) {
      return lower.get() + " to " + upper.get();
    }
    if (upper.isPresent()) {
      String sign = limits.above().map(Threshold::inclusive).orElse(false) ? "< " : "≤ ";
      return sign + upper.get() + grey(code, limits);
    }
    return lower.map(l -> "≥ " + l).orElse("no limit");
  }

  private static String grey(FindingCode code, Limits limits) {
    return limits
        .borderline()
        .map(c -> ", grey " + (c.inclusive() ? "≥ " : "> ") + Printed.of(code, c.at()))
        .orElse("");
  }
}
