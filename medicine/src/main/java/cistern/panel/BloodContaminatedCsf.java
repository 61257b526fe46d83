package cistern.panel;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Limits;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.finding.UnitProfile;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.Optional;

/**
 * So many erythrocytes in CSF that serum proteins and cells came along.
 *
 * @param limit so many erythrocytes, with their unit
 * @param place where the count stands
 * @param grounds what the limit rests on
 */
public record BloodContaminatedCsf(String limit, String place, Grounds grounds)
    implements PanelTrouble {

  private static final String CELLS = "erythrocytes";
  private static final String LIMIT = "erythrocytes.upper";

  static Optional<BloodContaminatedCsf> check(Panel panel, Facts facts) {
    double limit = facts.number(LIMIT);
    return panel
        .find(Sample.csf(Analyte.ERYTHROCYTES))
        .filter(m -> isBloody(m, limit))
        .map(m -> new BloodContaminatedCsf(written(limit, facts), m.place(), facts.grounds(LIMIT)));
  }

  private static String written(double limit, Facts facts) {
    String plain = Printed.significant(limit);
    return UnitProfile.of(facts)
        .find(Sample.csf(Analyte.ERYTHROCYTES))
        .map(unit -> unit.of(unit.limit(limit), CELLS))
        .orElseGet(() -> plain + " " + CELLS + "/µL");
  }

  private static boolean isBloody(Measurement cells, double limit) {
    return Limits.upper(Threshold.over(limit)).judge(cells.value()) == Verdict.ABOVE;
  }

  @Override
  public String code() {
    return "blood-contaminated";
  }

  @Override
  public String text() {
    return "More than %s: the CSF holds blood. Cells and proteins are raised by it; corrected values stand beside the measured ones and are estimates."
        .formatted(limit);
  }
}
