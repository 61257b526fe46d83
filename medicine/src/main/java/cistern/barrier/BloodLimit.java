package cistern.barrier;

import cistern.fact.Facts;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.finding.Verdict;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import java.util.Optional;

/**
 * How much blood in CSF the immunoglobulin limits bear: 0.1 % plasma (Djukic 2022, doi
 * 10.1186/s12974-022-02538-3), or a count of erythrocytes where the blood was not counted.
 */
public final class BloodLimit {

  private final Limits plasma;
  private final Limits cells;

  private BloodLimit(Limits plasma, Limits cells) {
    this.plasma = plasma;
    this.cells = cells;
  }

  /** The limit under some facts. */
  public static BloodLimit of(Facts facts) {
    return new BloodLimit(
        Limits.upper(Threshold.over(facts.number("blood.plasma-fraction.upper"))),
        Limits.upper(Threshold.from(facts.number("blood.erythrocytes-uncounted.upper"))));
  }

  /** Why the immunoglobulin verdicts are withheld, if they are. */
  public Optional<String> doubt(CheckedPanel panel) {
    Inputs fraction = PlasmaFraction.inputs(panel);
    if (!panel.panel().has(PlasmaFraction.CSF_CELLS)) {
      return Optional.empty();
    }
    Verdict blood =
        fraction.obstacle().isEmpty()
            ? plasma.judge(PlasmaFraction.of(fraction))
            : cells.judge(fraction.interval(PlasmaFraction.CSF_CELLS));
    return blood == Verdict.WITHIN
        ? Optional.empty()
        : Optional.of("undetermined because blood in the CSF can feign synthesis");
  }
}
