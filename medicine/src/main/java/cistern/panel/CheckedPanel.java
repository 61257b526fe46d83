package cistern.panel;

import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A panel with everything that is wrong with it: what every formula starts from.
 *
 * @param panel as reported, nothing changed
 * @param pairing whether the fluids may be compared
 * @param suspected samples whose value carries no verdict
 * @param problems all troubles, worst first
 */
public record CheckedPanel(
    Panel panel, Pairing pairing, Set<Sample> suspected, List<Problem> problems) {

  /** Copies the collections. */
  public CheckedPanel {
    suspected = Set.copyOf(suspected);
    problems = List.copyOf(problems);
  }

  /** Checks a panel: a trouble that only follows from a suspected value is not named again. */
  public static CheckedPanel check(Panel panel, Facts facts) {
    Pairing pairing = Pairing.of(panel, facts);
    List<ValueUnderSuspicion> suspicions = Plausibility.check(panel, facts);
    Set<Sample> suspected =
        suspicions.stream()
            .filter(ValueUnderSuspicion::isWithholding)
            .flatMap(s -> s.suspected().stream())
            .collect(Collectors.toSet());
    List<Problem> problems = new ArrayList<>();
    DrawsFarApart.check(pairing).ifPresent(problems::add);
    problems.addAll(suspicions);
    problems.addAll(SerumMissing.check(panel));
    problems.addAll(CsfMissing.check(panel));
    BloodContaminatedCsf.check(panel, facts).ifPresent(problems::add);
    NotLumbar.check(panel).ifPresent(problems::add);
    QuotientOutsideRange.check(panel, suspected, facts).ifPresent(problems::add);
    SerumAlbuminLow.check(panel, suspected, facts).ifPresent(problems::add);
    SerumIggLow.check(panel, suspected, facts).ifPresent(problems::add);
    RecentImmunoglobulin.check(panel).ifPresent(problems::add);
    PlasmaExchange.check(panel).ifPresent(problems::add);
    problems.addAll(ResultBeforeDraw.check(panel));
    problems.addAll(CellFractionsOverOne.check(panel, facts));
    return new CheckedPanel(panel, pairing, suspected, problems);
  }
}
