package cistern.differential;

import cistern.fact.Facts;
import cistern.finding.Printed;
import java.util.ArrayList;
import java.util.List;

/** What the trade says without a source, printed beside what the published counts predict. */
final class Practice {

  private static final double PER_CENT = 100;
  private static final double LEVEL = 0.95;

  private final Model model;
  private final Facts facts;

  Practice(Model model, Facts facts) {
    this.model = model;
    this.facts = facts;
  }

  /** Every habit that speaks of bands. */
  List<PracticeCompared> ofBands() {
    List<PracticeCompared> all = new ArrayList<>();
    all.add(compared(Disease.MS));
    all.add(compared(Disease.NMOSD));
    all.add(
        new PracticeCompared(
            Disease.ADEM,
            false,
            "Common practice, no source: ADEM shows bands that usually normalise within about %s"
                    .formatted(Printed.decimals(facts.number("practice.adem.bands.months"), 0))
                + " months. No published count of how often they vanish was found."));
    all.add(
        new PracticeCompared(
            Disease.NEUROSARCOIDOSIS,
            false,
            "Common practice, no source: neurosarcoidosis has %s. The published counts predict"
                    .formatted(facts.word("practice.neurosarcoidosis.bands"))
                + " bands in %s.".formatted(percent(belief(Disease.NEUROSARCOIDOSIS).mean()))));
    return all;
  }

  /** What is said of bands alike in CSF and serum. */
  PracticeCompared ofAlikeBands() {
    return new PracticeCompared(
        Disease.SYSTEMIC_IMMUNE_ACTIVATION,
        false,
        "Common practice, no source: %s; they lower the probability of MS and do not rule it out."
            .formatted(facts.word("practice.pattern-4")));
  }

  private PracticeCompared compared(Disease disease) {
    String key = "practice." + disease.code() + ".bands.";
    double low = facts.number(key + "low");
    double high = facts.number(key + "high");
    Belief belief = belief(disease);
    double[] quantiles = belief.quantiles((int) Math.round(1 / (1 - LEVEL)));
    double countedLow = quantiles[0];
    double countedHigh = quantiles[quantiles.length - 1];
    double about = facts.number("practice.about");
    boolean isDifferent = belief.mean() < low - about || high + about < belief.mean();
    String said = low == high ? percent(low) : percent(low) + " to " + percent(high);
    return new PracticeCompared(
        disease,
        isDifferent,
        "Common practice, no source: bands in %s of %s. The published counts predict %s (%s to %s)%s"
            .formatted(
                said,
                disease.term(),
                percent(belief.mean()),
                percent(countedLow),
                percent(countedHigh),
                isDifferent ? ": they differ, and the counts are used." : ", which agrees."));
  }

  private Belief belief(Disease disease) {
    return model.beliefs().pooled(model.beliefs().of(disease.code(), Rate.BANDS));
  }

  private static String percent(double share) {
    return Printed.decimals(share * PER_CENT, 0) + " %";
  }
}
