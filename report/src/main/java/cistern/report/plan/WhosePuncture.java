package cistern.report.plan;

import cistern.finding.Printed;
import cistern.interpretation.Caution;
import cistern.interpretation.Workup;
import cistern.panel.Person;
import cistern.puncture.PuncturePlan;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Kind;
import cistern.report.paper.Paper.Seal;
import cistern.report.wording.PrintedTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whose puncture a paper is about, and when it is: what stands on every page of it. */
final class WhosePuncture {

  private WhosePuncture() {}

  /** When it was done, else when it is planned. */
  static Optional<OffsetDateTime> at(PuncturePlan plan) {
    return plan.subject().draw().at().or(() -> plan.procedure().before().times().plannedAt());
  }

  static Paper.Front front(String title, Workup workup, PuncturePlan plan, PrintedTime times) {
    String invented = workup.remarks().isInvented() ? " " + Caution.INVENTED.text() : "";
    return new Paper.Front(
        Kind.LEAF,
        title + ", work-up " + workup.id(),
        String.join(" · ", of(workup, plan, times)),
        Caution.RESEARCH_ONLY.text() + invented,
        times.locale(),
        new Seal.NotNeeded());
  }

  /** The person and the puncture, each part as far as it is known. */
  static List<String> of(Workup workup, PuncturePlan plan, PrintedTime times) {
    List<String> parts = new ArrayList<>(person(workup));
    boolean isDone = plan.subject().draw().at().isPresent();
    at(plan).map(t -> (isDone ? "puncture " : "planned ") + times.at(t)).ifPresent(parts::add);
    return parts;
  }

  /** Who it is: the two identifiers of a label where both are known, and age and sex. */
  static List<String> person(Workup workup) {
    Person person = workup.panel().person();
    List<String> parts = new ArrayList<>();
    person.id().ifPresent(id -> parts.add("person " + id));
    if (person.ageYears().isPresent()) {
      double years = person.ageYears().getAsDouble();
      parts.add(Printed.decimals(years, years == Math.rint(years) ? 0 : 1) + " years");
    }
    person.sex().ifPresent(parts::add);
    return parts;
  }
}
