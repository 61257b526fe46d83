package cistern.uncertainty;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Threshold;
import cistern.finding.Uncertainty;
import cistern.measurement.Interval;
import cistern.panel.CheckedPanel;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What measurement error alone leaves open about the findings of a panel: ln x is normal with mean
 * ln value and variance ln(1 + cv²), all inputs independent. A finding has an interval when it has
 * a value and the imprecision of an input is known, and a probability when it also has a limit,
 * whether or not a doubt withholds its verdict.
 */
public final class Uncertainties {

  /** In this order, so that the last bit of a sum is the same in every run. */
  private static final List<FindingCode> MRZ =
      List.of(
          FindingCode.MEASLES_ANTIBODY_INDEX,
          FindingCode.RUBELLA_ANTIBODY_INDEX,
          FindingCode.VARICELLA_ZOSTER_ANTIBODY_INDEX);

  private final Imprecision imprecision;
  private final Rules rules;

  private Uncertainties(Facts facts) {
    imprecision = Imprecision.of(facts);
    rules = Rules.of(facts);
  }

  /** The uncertainties under some facts. */
  public static Uncertainties of(Facts facts) {
    return new Uncertainties(facts);
  }

  /** The findings of a panel, each with what measurement error leaves open. */
  public Findings measure(CheckedPanel panel, Findings findings) {
    PanelSpreads spreads = spreads(panel);
    return Findings.of(
        findings.all().stream()
            .map(
                f ->
                    f.withUncertainty(
                        new Uncertainty(interval(spreads, f), probability(spreads, f, findings))))
            .toList());
  }

  /** The probabilities alone, by code; a code without one is left out. */
  public Map<FindingCode, Double> probabilities(CheckedPanel panel, Findings findings) {
    PanelSpreads spreads = spreads(panel);
    Map<FindingCode, Double> byCode = new EnumMap<>(FindingCode.class);
    for (Finding finding : findings.all()) {
      OptionalDouble probability = probability(spreads, finding, findings);
      if (probability.isPresent()) {
        byCode.put(finding.code(), probability.getAsDouble());
      }
    }
    return byCode;
  }

  private PanelSpreads spreads(CheckedPanel panel) {
    return new PanelSpreads(PanelErrors.of(panel.panel(), imprecision), rules);
  }

  /** How often verdicts would change if the whole panel were measured once more. */
  public RepeatChange repeat(CheckedPanel panel, Findings findings) {
    return RepeatChange.of(PanelErrors.of(panel.panel(), imprecision), rules, findings);
  }

  private static Optional<Interval> interval(PanelSpreads spreads, Finding finding) {
    if (finding.number().isEmpty()
        || finding.code() == FindingCode.MRZ_REACTION
        || !spreads.errors().isImprecisionKnown(finding.inputs())) {
      return Optional.empty();
    }
    return spreads.errors().isErrorFree(finding.inputs())
        ? finding.value()
        : spreads.find(finding.code()).map(Spread::interval95);
  }

  private static Optional<Threshold> cut(Finding finding) {
    return finding.limits().above().or(() -> finding.limits().within());
  }

  private static OptionalDouble probability(PanelSpreads spreads, Finding finding, Findings all) {
    Optional<Threshold> cut = cut(finding);
    if (cut.isEmpty()
        || finding.number().isEmpty()
        || !spreads.errors().isImprecisionKnown(finding.inputs())) {
      return OptionalDouble.empty();
    }
    if (finding.code() == FindingCode.MRZ_REACTION) {
      return count(spreads, finding, all);
    }
    return OptionalDouble.of(
        spreads.errors().isErrorFree(finding.inputs())
            ? certain(finding.number().getAsDouble(), cut.get())
            : Math.clamp(spreads.chanceOver(finding.code(), cut.get()), 0, 1));
  }

  /** Whether an error-free value lies over its limit, 0 or 1. */
  static double certain(double value, Threshold cut) {
    return value > cut.at() || (cut.inclusive() && value == cut.at()) ? 1 : 0;
  }

  /**
   * The chance that at least as many antibody indices as the limit asks for lie above theirs; none
   * where one of them is only known between bounds.
   */
  private static OptionalDouble count(PanelSpreads spreads, Finding finding, Findings all) {
    if (!spreads.errors().isExact(finding.inputs())) {
      return OptionalDouble.empty();
    }
    List<LogNormal> steps = new ArrayList<>();
    for (FindingCode code : MRZ) {
      Finding index = all.get(code);
      if (index.hasValue()) {
        double limit = cut(index).map(Threshold::at).orElseThrow();
        steps.add(spreads.errors().quotient(code.analyte()).times(1 / limit));
      }
    }
    int least = (int) Math.ceil(cut(finding).map(Threshold::at).orElseThrow());
    double chance =
        new AntibodyCount(steps, spreads.expected(), spreads.points()).chanceFrom(least);
    return OptionalDouble.of(Math.clamp(chance, 0, 1));
  }
}
