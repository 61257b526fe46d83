package cistern.report.figure;

import cistern.barrier.Hyperbola;
import cistern.barrier.QuotientLimits;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Printed;
import cistern.measurement.Interval;
import cistern.report.wording.ValueWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A quotient diagram in words.
 *
 * @param protein whose quotient it is
 * @param limits the published curves
 */
record DiagramText(Protein protein, QuotientLimits limits) {

  private static final String NONE = "–";

  /** What the diagram shows, as a sentence. */
  String title(Findings findings) {
    Finding quotient = findings.get(protein.quotient());
    Finding albumin = findings.get(FindingCode.ALBUMIN_QUOTIENT);
    String name = protein.term() + " quotient ";
    if (!quotient.hasValue() || !albumin.hasValue()) {
      return name + "not drawn: " + (quotient.hasValue() ? albumin : quotient).note();
    }
    return switch (quotient.verdict()) {
      case ABOVE ->
          name
              + "above its limit: "
              + ValueWords.value(findings.get(protein.fraction()))
              + " made within the CNS";
      case WITHIN -> name + "within its limit: local synthesis not demonstrated";
      case BELOW -> name + "under the lowest plausible value";
      case BORDERLINE -> name + "borderline";
      case UNDETERMINED -> name + "without a verdict";
    };
  }

  /** The numbers of the diagram in sentences. */
  String description(Findings findings, List<EarlierPuncture> earlier) {
    StringBuilder text = new StringBuilder("Both axes are logarithmic, quotients times 1000. ");
    text.append("Albumin quotient %s; ".formatted(value(findings, FindingCode.ALBUMIN_QUOTIENT)));
    text.append("%s quotient %s. ".formatted(protein.term(), value(findings, protein.quotient())));
    findings
        .get(FindingCode.ALBUMIN_QUOTIENT)
        .limits()
        .above()
        .ifPresent(
            c -> text.append("Age limit of albumin %s. ".formatted(Printed.quotient(c.at()))));
    albumin(findings)
        .ifPresent(
            a ->
                text.append(
                    "Limit of %s there %s. ".formatted(protein.term(), at(limits.upper(), a))));
    for (EarlierPuncture one : earlier) {
      text.append(
          "Earlier puncture %s: albumin %s, %s %s. "
              .formatted(
                  one.number(),
                  value(one.findings(), FindingCode.ALBUMIN_QUOTIENT),
                  protein.term(),
                  value(one.findings(), protein.quotient())));
    }
    return text.toString().strip();
  }

  /** The numbers of the diagram in rows. */
  FigureTable table(Findings findings, List<EarlierPuncture> earlier) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(row("this puncture", findings));
    region(findings).ifPresent(rows::add);
    earlier.forEach(e -> rows.add(row("earlier puncture " + e.number(), e.findings())));
    return new FigureTable(
        List.of(
            "× 10³",
            "albumin quotient",
            protein.term() + " quotient",
            "limit there",
            "mean there",
            "lowest there"),
        rows);
  }

  private List<String> row(String name, Findings findings) {
    Function<Hyperbola, String> there =
        curve -> albumin(findings).map(a -> at(curve, a)).orElse(NONE);
    return List.of(
        name,
        value(findings, FindingCode.ALBUMIN_QUOTIENT),
        value(findings, protein.quotient()),
        there.apply(limits.upper()),
        limits.mean().map(there).orElse(NONE),
        limits.lower().map(there).orElse(NONE));
  }

  private Optional<List<String>> region(Findings findings) {
    Optional<Interval> x = interval(findings, FindingCode.ALBUMIN_QUOTIENT);
    Optional<Interval> y = interval(findings, protein.quotient());
    return x.isEmpty() || y.isEmpty()
        ? Optional.empty()
        : Optional.of(
            List.of("its 95 % interval", between(x.get()), between(y.get()), NONE, NONE, NONE));
  }

  private static Optional<Interval> interval(Findings findings, FindingCode code) {
    return findings.get(code).uncertainty().interval95();
  }

  private static String between(Interval interval) {
    return Printed.quotient(interval.lower()) + "–" + Printed.quotient(interval.upper());
  }

  private static Optional<Double> albumin(Findings findings) {
    return findings
        .get(FindingCode.ALBUMIN_QUOTIENT)
        .value()
        .filter(Interval::isExact)
        .map(Interval::exactly);
  }

  private static String at(Hyperbola curve, double albumin) {
    return Printed.quotient(curve.at(albumin));
  }

  private static String value(Findings findings, FindingCode code) {
    return findings.get(code).value().map(DiagramText::words).orElse("not measured");
  }

  private static String words(Interval value) {
    String low = Printed.quotient(value.lower());
    if (value.isExact()) {
      return low;
    }
    if (value.lower() <= 0) {
      return "below " + Printed.quotient(value.upper());
    }
    return Double.isInfinite(value.upper())
        ? "above " + low
        : "between %s and %s".formatted(low, Printed.quotient(value.upper()));
  }
}
