package cistern.report.plan;

import cistern.interpretation.Caution;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Line;
import java.util.List;

/** The tubes of a puncture and a label for each, on a sheet of their own for who fills them. */
public final class TubePaper {

  private TubePaper() {}

  /**
   * The sheet of a plan.
   *
   * @param foot what made it
   */
  public static Paper of(Workup workup, PuncturePlan plan, String foot) {
    List<Line> answer =
        workup.remarks().isInvented() ? List.of(Line.of(Caution.INVENTED.text())) : List.of();
    return new Paper(
        "Tubes and labels, work-up " + workup.id(),
        answer,
        new TubeSections(workup.id(), plan.tubes()).sections(),
        foot);
  }
}
