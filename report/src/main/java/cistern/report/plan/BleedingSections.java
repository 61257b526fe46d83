package cistern.report.plan;

import cistern.finding.Printed;
import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.GuidelineAnswer;
import cistern.puncture.bleeding.Hours;
import cistern.puncture.bleeding.ThresholdAnswer;
import cistern.puncture.procedure.DoseClass;
import cistern.report.figure.Figure;
import cistern.report.figure.HoldTimeLine;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Place;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import cistern.report.wording.PrintedTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Antithrombotics and clotting, guideline beside guideline. */
final class BleedingSections {

  /** The first page holds no more charts than these. */
  private static final int MOST_CHARTS = 3;

  private final PuncturePlan plan;
  private final PrintedTime times;

  BleedingSections(PuncturePlan plan, PrintedTime times) {
    this.plan = plan;
    this.times = times;
  }

  /** Each drug with its earliest time by each guideline; nothing where none is taken. */
  Optional<Section> first() {
    List<AntithromboticPlan> drugs = plan.bleeding().antithrombotics();
    if (drugs.isEmpty()) {
      return Optional.empty();
    }
    List<Block> blocks = new ArrayList<>();
    List<Line> silent = new ArrayList<>();
    int drawn = 0;
    for (AntithromboticPlan drug : drugs) {
      Optional<Figure> chart = chart(drug, ++drawn);
      if (drawn <= MOST_CHARTS && chart.isPresent()) {
        blocks.add(new Picture(chart.get()));
      } else {
        silent.add(Line.of(without(drug, chart.isPresent())));
      }
    }
    silent.add(Line.of(HoldTimeLine.DEFER));
    blocks.add(new Paragraphs(silent));
    return Optional.of(new Section("Earliest time by each guideline", blocks));
  }

  private Optional<Figure> chart(AntithromboticPlan drug, int number) {
    return HoldTimeLine.of(drug, "antithrombotic-" + number, times);
  }

  private static String without(AntithromboticPlan drug, boolean isDrawn) {
    String name = capital(drug.taken().name());
    if (isDrawn) {
      return name + ": in the annex.";
    }
    return drug.answers().stream().anyMatch(answer -> answer.hold().isPresent())
        ? name + ": no guideline here asks for an interval before the puncture."
        : name + ": no guideline here gives an interval; ask the prescriber.";
  }

  List<Section> sections() {
    List<Section> all = new ArrayList<>();
    List<AntithromboticPlan> drugs = plan.bleeding().antithrombotics();
    for (int i = 0; i < drugs.size(); i++) {
      all.add(drug(drugs.get(i), i < MOST_CHARTS ? Optional.empty() : chart(drugs.get(i), i + 1)));
    }
    boolean isMeasured =
        plan.bleeding().thresholds().stream()
            .anyMatch(t -> t.standing() != ThresholdAnswer.Standing.ASK);
    if (isMeasured) {
      all.add(Section.annex("Platelets, INR and aPTT", thresholds()));
    }
    return all;
  }

  private static Section drug(AntithromboticPlan drug, Optional<Figure> timeLine) {
    String since =
        drug.hours().isPresent()
            ? Printed.decimals(drug.hours().getAsDouble(), 1)
                + " h from the last dose to the puncture"
            : "the time since the last dose is not known";
    String dose =
        drug.taken().doseClass() == DoseClass.UNKNOWN
            ? ""
            : "Counted as a " + drug.taken().doseClass().code() + " dose; ";
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Paragraphs(List.of(Line.of(capital(dose + since + ".")))));
    timeLine.ifPresent(figure -> blocks.add(new Picture(figure)));
    blocks.add(
        new Table(
            "Guidelines",
            List.of("Guideline", "before", "until the next dose", "answer", "reason"),
            drug.answers().stream().map(BleedingSections::row).toList()));
    return new Section("Antithrombotic: " + drug.taken().name(), blocks, Place.ANNEX);
  }

  private static Row row(GuidelineAnswer answer) {
    String conditions =
        answer.conditions().isEmpty() ? "" : ", with " + String.join(", ", answer.conditions());
    return new Row(
        List.of(
            answer.guideline().title() + " (" + answer.guideline().scope() + ")",
            hours(answer.hold()) + conditions,
            hours(answer.restart()) + traumatic(answer),
            answer.verdict().word().replace('-', ' '),
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
                        List.of(
                            t.test().term(), t.guideline().title(), t.standing().word(), t.text()),
                        t.grounds()))
            .toList();
    return new Table("Who says what", List.of("Test", "guideline", "answer", "limit"), rows);
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
