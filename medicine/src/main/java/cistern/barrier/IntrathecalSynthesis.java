package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.FindingCode.Kind;
import cistern.finding.Limits;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.finding.UnitProfile;
import cistern.finding.Verdict;
import cistern.finding.WrittenUnit;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Quotient against its hyperbolic limit, intrathecal fraction 1 − Qlim/Q and local amount (Q −
 * Qlim)·serum in mg/L, both zero at or under the limit (Reiber 1994; Fluids Barriers CNS 2012;9:17
 * figure 1).
 */
public final class IntrathecalSynthesis {

  private static final Limits OVER_ZERO = Limits.upper(Threshold.over(0));

  private final Analyte analyte;
  private final FindingCode quotient;
  private final FindingCode fraction;
  private final FindingCode local;
  private final QuotientLimits limits;
  private final Grounds quotientFormula;
  private final BloodLimit blood;
  private final UnitProfile units;

  private IntrathecalSynthesis(Analyte analyte, Facts facts) {
    this.analyte = analyte;
    quotient = FindingCode.of(Kind.QUOTIENT, analyte);
    fraction = FindingCode.of(Kind.FRACTION, analyte);
    local = FindingCode.of(Kind.LOCAL, analyte);
    this.limits = QuotientLimits.of(facts, analyte);
    this.quotientFormula = facts.grounds("quotient.formula");
    this.blood = BloodLimit.of(facts);
    units = UnitProfile.of(facts);
  }

  /** The rule for IgG, IgA, IgM and κ. */
  public static List<IntrathecalSynthesis> all(Facts facts) {
    return Stream.of(Analyte.IGG, Analyte.IGA, Analyte.IGM, Analyte.KAPPA)
        .map(analyte -> new IntrathecalSynthesis(analyte, facts))
        .toList();
  }

  /** Quotient, fraction and amount of a panel, in this order. */
  public List<Finding> interpret(CheckedPanel panel) {
    Sample csf = Sample.csf(analyte);
    Sample serum = Sample.serum(analyte);
    Inputs own = Inputs.of(panel, csf, serum).dividingBy(serum);
    Inputs all = own.and(AlbuminQuotient.inputs(panel));
    return List.of(
        doubted(quotient(own, all), all), doubted(fraction(all), all), doubted(local(all), all));
  }

  private Finding doubted(Finding finding, Inputs all) {
    Optional<String> doubt =
        analyte == Analyte.KAPPA ? all.doubt() : all.doubt().or(() -> blood.doubt(all.panel()));
    return finding.hasValue() ? doubt.map(finding::withDoubt).orElse(finding) : finding;
  }

  private Finding quotient(Inputs own, Inputs all) {
    Optional<String> obstacle = own.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(this.quotient, quotientFormula, own.present(), obstacle.get());
    }
    Interval quotient = quotient(own);
    Optional<String> noLimit = all.obstacle();
    if (noLimit.isPresent()) {
      return Finding.of(this.quotient, quotient, quotientFormula, own.present())
          .withDoubt("no limit, " + noLimit.get());
    }
    Finding finding = Finding.of(this.quotient, quotient, limits.grounds(), all.present());
    Interval albumin = AlbuminQuotient.quotient(all);
    Verdict verdict =
        limits.at(albumin.upper()).judge(joint(quotient, albumin), limits.at(albumin.lower()));
    return albumin.censored()
        ? finding
            .withVerdict(verdict, Limits.NONE, Optional.of(limits.rule()))
            .withNote(limitBetween(albumin))
        : finding
            .withVerdict(verdict, limits.at(albumin.lower()), Optional.of(limits.rule()))
            .withNote(caveat(verdict));
  }

  private Finding fraction(Inputs all) {
    Optional<String> obstacle = all.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(this.fraction, limits.grounds(), all.present(), obstacle.get());
    }
    Interval quotient = quotient(all);
    Interval albumin = AlbuminQuotient.quotient(all);
    Interval fraction =
        new Interval(
            fraction(quotient.lower(), albumin.upper()),
            fraction(quotient.upper(), albumin.lower()),
            quotient.censored() || albumin.censored());
    return synthesis(this.fraction, fraction, all);
  }

  private Finding local(Inputs all) {
    Optional<String> obstacle = all.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(this.local, limits.grounds(), all.present(), obstacle.get());
    }
    Interval csf = all.interval(Sample.csf(analyte));
    Interval serum = all.interval(Sample.serum(analyte));
    Interval albumin = AlbuminQuotient.quotient(all);
    double low = csf.lower() - limits.upper().at(albumin.upper()) * serum.upper();
    double high = csf.upper() - limits.upper().at(albumin.lower()) * serum.lower();
    boolean isCensored = csf.censored() || serum.censored() || albumin.censored();
    Interval amount = new Interval(Math.max(0, low), Math.max(0, high), isCensored);
    String unclipped =
        isCensored || low >= 0 ? "" : "unclipped " + unclipped(low) + " against the limit";
    return synthesis(this.local, amount, all).withNote(unclipped);
  }

  private String unclipped(double low) {
    Optional<WrittenUnit> unit = units.find(local);
    String number = WrittenUnit.number(unit, u -> u.limit(low), () -> Printed.decimals(low, 1));
    return number + " " + unit.map(WrittenUnit::text).orElse("mg/L");
  }

  private Finding synthesis(FindingCode code, Interval value, Inputs all) {
    Interval albumin = AlbuminQuotient.quotient(all);
    Verdict verdict =
        limits
            .upperAt(albumin.upper())
            .judge(joint(quotient(all), albumin), limits.upperAt(albumin.lower()));
    return Finding.of(code, value, limits.grounds(), all.present())
        .withVerdict(verdict, OVER_ZERO, Optional.of(limits.rule()));
  }

  private Interval quotient(Inputs inputs) {
    return inputs.quotient(Sample.csf(analyte), Sample.serum(analyte));
  }

  /** The quotient, open as soon as the limit it is judged by is open. */
  private static Interval joint(Interval quotient, Interval albumin) {
    return new Interval(
        quotient.lower(), quotient.upper(), quotient.censored() || albumin.censored());
  }

  private double fraction(double quotient, double albuminQuotient) {
    double limit = limits.upper().at(albuminQuotient);
    return quotient <= limit ? 0 : 1 - limit / quotient;
  }

  private String limitBetween(Interval albumin) {
    return "the limit lies between %s and %s × 10⁻³"
        .formatted(
            Printed.quotient(limits.upper().at(albumin.lower())),
            Printed.quotient(limits.upper().at(albumin.upper())));
  }

  private static String caveat(Verdict verdict) {
    return switch (verdict) {
      case WITHIN -> "a small synthesis can lie hidden under the limit";
      case BELOW -> "implausibly low for this albumin quotient";
      case ABOVE, BORDERLINE, UNDETERMINED -> "";
    };
  }
}
