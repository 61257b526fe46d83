package cistern.interpretation;

import cistern.bands.BandReport;
import cistern.finding.Problem;
import cistern.panel.Panel;
import java.util.List;

/**
 * One puncture with everything that is known about it.
 *
 * @param id {@code [A-Za-z0-9._-]{1,64}}
 * @param panel the results
 * @param bands what was reported of the gel
 * @param problems what reading the file already showed: kept, but not understood
 */
public record Workup(String id, Panel panel, BandReport bands, List<Problem> problems) {

  /** Copies the problems. */
  public Workup {
    problems = List.copyOf(problems);
  }
}
