package cistern.report.plan;

import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.HoldVerdict;
import cistern.puncture.decision.Contraindication;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.specimen.Tube;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Who must be told of what before a puncture. */
final class WhoIsTold {

  /** Whose advice a contraindication asks for, in the order of its weight. */
  private static final Map<String, String> ADVICE =
      Map.of(
          "mass-or-raised-pressure", "neurosurgery",
          "spinal-block", "neuroradiology",
          "clotting", "haematology",
          "spine-anomaly", "neuroradiology");

  private WhoIsTold() {}

  static Section of(PuncturePlan plan) {
    List<Row> rows = new ArrayList<>();
    plan.decision().contraindications().stream()
        .filter(c -> c.present().isYes() && ADVICE.containsKey(c.code()))
        .map(c -> Row.of(ADVICE.getOrDefault(c.code(), ""), c.text(), "before anything else"))
        .forEach(rows::add);
    List<String> drugs =
        plan.bleeding().antithrombotics().stream()
            .filter(d -> d.together() != HoldVerdict.PASSED)
            .map(AntithromboticPlan::taken)
            .map(t -> t.name())
            .distinct()
            .toList();
    if (!drugs.isEmpty()) {
      rows.add(
          Row.of(
              "who prescribed " + String.join(", ", drugs),
              "whether it may be interrupted, from when, and until when",
              "before a date is fixed"));
    }
    plan.readiness().with(Precaution.State.PRESENT).stream()
        .filter(p -> p.code().equals("allergy"))
        .map(p -> Row.of("who does the puncture", p.text(), "before the tray is laid"))
        .forEach(rows::add);
    if (plan.decision().verdict().go() != Contraindication.Go.DO_NOT) {
      rows.add(Row.of("the laboratory", tubes(plan.tubes().tubes()), "before the draw"));
    }
    rows.add(
        Row.of(
            "the person", "whom to call, and when: the page for the person", "before they leave"));
    return Section.of("Who is told", new Table("", List.of("Who", "what", "when"), rows));
  }

  private static String tubes(List<Tube> tubes) {
    String first = tubes.stream().findFirst().map(t -> "; tube 1: " + t.limit()).orElse("");
    return tubes.size() + " tubes and serum of the same visit" + first;
  }
}
