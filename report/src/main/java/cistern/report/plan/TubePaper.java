package cistern.report.plan;

import cistern.fact.Facts;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.specimen.Tube;
import cistern.report.paper.LabelStock;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Front;
import cistern.report.paper.Paper.Kind;
import cistern.report.paper.Paper.Label;
import cistern.report.paper.Paper.Labels;
import cistern.report.paper.Paper.Section;
import cistern.report.wording.PrintedTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The tubes of a puncture, and a label for each and for the serum beside them. */
public final class TubePaper {

  private static final String WRITTEN = "Name, born ________________________";
  private static final String DRAWN = "Drawn ____________  by ____________";

  /** What is compared with serum. */
  private static final Set<CsfTest> PAIRED =
      Set.of(CsfTest.BANDS, CsfTest.QUOTIENTS, CsfTest.KAPPA);

  private final Workup workup;
  private final PuncturePlan plan;
  private final LabelStock stock;

  private TubePaper(Workup workup, PuncturePlan plan, Facts facts) {
    this.workup = workup;
    this.plan = plan;
    this.stock = LabelStock.of(facts);
  }

  /**
   * The tubes with their limits and their labels, for a screen.
   *
   * @param facts in force
   * @param foot what made it
   */
  public static Paper of(Workup workup, PuncturePlan plan, Facts facts, String foot) {
    TubePaper paper = new TubePaper(workup, plan, facts);
    List<Section> sections =
        List.of(new TubeSections(plan.tubes()).details(), Section.of("Labels", paper.labels()));
    return new Paper(paper.front(Kind.LEAF, facts), List.of(), sections, foot);
  }

  /**
   * The labels alone, set on the label stock in use.
   *
   * @param facts in force
   * @param foot what made it
   */
  public static Paper labels(Workup workup, PuncturePlan plan, Facts facts, String foot) {
    TubePaper paper = new TubePaper(workup, plan, facts);
    return new Paper(
        paper.front(Kind.LABELS, facts), List.of(), List.of(Section.of("", paper.labels())), foot);
  }

  private Front front(Kind kind, Facts facts) {
    PrintedTime times = PrintedTime.of(facts).like(WhosePuncture.at(plan));
    Front front = WhosePuncture.front("Tubes and labels", workup, plan, times);
    return new Front(
        kind, front.title(), front.taken(), front.banner(), front.language(), front.seal());
  }

  private Labels labels() {
    List<Tube> tubes = plan.tubes().tubes();
    List<Label> labels = new ArrayList<>();
    tubes.forEach(
        t ->
            labels.add(
                label("CSF %d/%d: %s".formatted(t.order(), tubes.size(), TubeSections.tests(t)))));
    Set<CsfTest> asked = Set.copyOf(tubes.stream().flatMap(t -> t.tests().stream()).toList());
    if (asked.contains(CsfTest.CHEMISTRY)) {
      labels.add(label("BLOOD: glucose, at the same time"));
    }
    if (asked.stream().anyMatch(PAIRED::contains)) {
      labels.add(label("SERUM of the same visit: pair of the CSF"));
    }
    return new Labels(stock, labels);
  }

  private Label label(String heading) {
    String person = String.join(" · ", WhosePuncture.person(workup));
    String invented = workup.remarks().isInvented() ? " · invented" : "";
    return new Label(
        heading,
        Stream.of(
                person.isEmpty() ? "Identifier ________________________" : person,
                WRITTEN,
                "Work-up " + workup.id() + invented,
                DRAWN)
            .toList());
  }
}
