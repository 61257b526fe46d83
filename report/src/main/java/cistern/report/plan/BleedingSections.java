package cistern.report.plan;

import cistern.finding.Printed;
import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.GuidelineAnswer;
import cistern.puncture.bleeding.Hours;
import cistern.puncture.bleeding.ThresholdAnswer;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Antithrombotics and clotting, guideline beside guideline. */
final class BleedingSections {

  private static final String DEFER =
      "Defer to local policy and the licensed prescriber. These are ranges for discussion, not"
          + " instructions; they are shown side by side and never averaged.";

  private final PuncturePlan plan;

  BleedingSections(PuncturePlan plan) {
    this.plan = plan;
  }

  List<Section> sections() {
    List<Section> all = new ArrayList<>();
    plan.bleeding().antithrombotics().forEach(drug -> all.add(drug(drug)));
    boolean isMeasured =
        plan.bleeding().thresholds().stream()
            .anyMatch(t -> t.standing() != ThresholdAnswer.Standing.ASK);
    if (isMeasured) {
      all.add(Section.of("Platelets, INR and aPTT", thresholds()));
    }
    return all;
  }

  private static Section drug(AntithromboticPlan drug) {
    String since =
        drug.hours().isPresent()
            ? Printed.decimals(drug.hours().getAsDouble(), 1)
                + " h from the last dose to the puncture"
            : "the time since the last dose is not known";
    String dose = drug.taken().doseClass().code();
    return Section.of(
        "Antithrombotic: " + drug.taken().name(),
        new Paragraphs(List.of(Line.of(DEFER), Line.of("Dose class " + dose + "; " + since + "."))),
        new Table(
            "Guidelines",
            List.of("Guideline", "before", "until the next dose", "answer", "reason"),
            drug.answers().stream().map(BleedingSections::row).toList()));
  }

  private static Row row(GuidelineAnswer answer) {
    String conditions =
        answer.conditions().isEmpty() ? "" : ", with " + String.join(", ", answer.conditions());
    return new Row(
        List.of(
            answer.voice().title() + " (" + answer.voice().scope() + ")",
            hours(answer.hold()) + conditions,
            hours(answer.restart()) + traumatic(answer),
            answer.reply().word().replace('-', ' '),
            answer.reason()),
        answer.grounds());
  }

  private static String traumatic(GuidelineAnswer answer) {
    return answer.restartTraumatic().map(h -> "; " + h.toText() + " after a bloody tap").orElse("");
  }

  private static String hours(Optional<Hours> hours) {
    return hours.map(Hours::toText).orElse("ask the prescriber");
  }

  private Table thresholds() {
    List<Row> rows =
        plan.bleeding().thresholds().stream()
            .filter(t -> t.standing() != ThresholdAnswer.Standing.ASK)
            .map(
                t ->
                    new Row(
                        List.of(t.test().term(), t.voice().title(), t.standing().word(), t.text()),
                        t.grounds()))
            .toList();
    return new Table("Who says what", List.of("Test", "guideline", "answer", "limit"), rows);
  }
}
