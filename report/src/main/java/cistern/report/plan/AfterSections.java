package cistern.report.plan;

import cistern.finding.Printed;
import cistern.measurement.Answer;
import cistern.puncture.PuncturePlan;
import cistern.puncture.PuncturePlan.Afterwards;
import cistern.puncture.aftercare.AfterCare;
import cistern.puncture.headache.HeadacheAssessment;
import cistern.puncture.headache.RedFlagAnswer;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.Question;
import cistern.puncture.readiness.OpeningPressure;
import cistern.puncture.specimen.CriticalValue;
import cistern.puncture.specimen.Outstanding;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Field;
import cistern.report.paper.Paper.Form;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import cistern.report.wording.PrintedTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** What was done, the pressure, headache with its questions, and results to chase. */
final class AfterSections {

  private final PuncturePlan plan;
  private final PrintedTime times;

  AfterSections(PuncturePlan plan, PrintedTime times) {
    this.plan = plan;
    this.times = times;
  }

  /** What stands after the first page: the note, the pressure, and afterwards every question. */
  List<Section> details() {
    Afterwards afterwards = plan.afterwards();
    List<Section> all = new ArrayList<>();
    all.add(note());
    afterwards.pressure().ifPresent(p -> all.add(pressure(p)));
    if (plan.isDone()) {
      ladder().ifPresent(all::add);
      all.add(headache(afterwards.headache()));
    }
    return all;
  }

  /** What leads once the puncture is done: who is told, the patch, what is due, when to call. */
  List<Section> first() {
    AfterCare care = plan.afterwards().care();
    List<Section> all = new ArrayList<>();
    if (!plan.afterwards().critical().isEmpty()) {
      all.add(critical(plan.afterwards().critical()));
    }
    if (!plan.afterwards().outstanding().isEmpty()) {
      all.add(outstanding(plan.afterwards().outstanding()));
    }
    all.add(patch(care.patch()));
    all.add(
        Section.of(
            "Calls to the person", new Items("", care.calls().stream().map(this::call).toList())));
    return all;
  }

  private Optional<Section> ladder() {
    List<Line> steps =
        plan.afterwards().care().ladder().stream()
            .map(s -> new Line(s.text() + " First look at: " + s.check(), s.grounds()))
            .toList();
    return steps.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Section.of(
                "What has been studied; local policy and the prescriber decide",
                new Items("", steps)));
  }

  private static Section patch(AfterCare.PatchInformation patch) {
    List<Line> lines = new ArrayList<>();
    if (patch.isHeld()) {
      lines.add(Line.of("Nothing is said of a blood patch here, because:"));
      patch.because().forEach(r -> lines.add(new Line(r.text(), r.grounds())));
    }
    if (!patch.open().isEmpty()) {
      lines.add(
          Line.of(
              "Before anybody speaks of a patch, look at: "
                  + String.join("; ", patch.open())
                  + "."));
    }
    if (lines.isEmpty()) {
      lines.add(Line.of("Every point on the list was answered; it is looked at again on the day."));
    }
    return Section.of("Blood patch", new Items("", lines));
  }

  private Line call(AfterCare.FollowUpCall call) {
    String when = call.from().isPresent() ? ", " + times.at(call.from().get()) : "";
    return new Line(
        call.text()
            + ": day "
            + Printed.decimals(call.fromDay(), 0)
            + " to "
            + Printed.decimals(call.toDay(), 0)
            + when
            + ".",
        call.grounds());
  }

  private Section note() {
    Done done = plan.procedure().done();
    Optional<OffsetDateTime> at = plan.subject().draw().at();
    return Section.of(
        "Procedure note",
        new Form(
            "To be completed",
            List.of(
                new Field("Date and time", at.map(times::at).orElse("")),
                new Field("Operator", done.operator().orElse("")),
                new Field("Level", done.level().orElse("")),
                new Field("Position", position(done)),
                new Field("Needle", needle(done)),
                new Field("Attempts", number(done.attempts())),
                new Field("Stylet put back", word(done.answers().answer(Question.STYLET_REPLACED))),
                new Field("Bloody tap", word(done.answers().answer(Question.TRAUMATIC))),
                new Field("Sedation", word(done.answers().answer(Question.SEDATION))),
                new Field("Volume, mL", volume()),
                new Field("Complications", String.join(", ", done.complications())))));
  }

  private static String position(Done done) {
    return done.position() == cistern.puncture.procedure.Position.UNKNOWN
        ? ""
        : done.position().term();
  }

  private static String needle(Done done) {
    String gauge = done.needle().gauge().isPresent() ? done.needle().gauge().getAsInt() + "G " : "";
    String tip = done.needle().tip().code();
    return gauge.isEmpty() && tip.equals("unknown") ? "" : gauge + tip;
  }

  private String volume() {
    return plan.subject().draw().volumeMl().isPresent()
        ? Printed.decimals(plan.subject().draw().volumeMl().getAsDouble(), 1)
        : "";
  }

  private static String number(OptionalInt value) {
    return value.isPresent() ? String.valueOf(value.getAsInt()) : "";
  }

  private static String word(Answer answer) {
    return answer.isKnown() ? answer.word() : "";
  }

  private static Section pressure(OpeningPressure pressure) {
    List<Row> rows =
        pressure.ranges().stream()
            .map(
                r ->
                    new Row(
                        List.of(
                            r.code().replace('-', ' '),
                            one(r.lower()) + "–" + one(r.upper()) + " cmH₂O",
                            r.verdict().word()),
                        r.grounds()))
            .toList();
    String value =
        one(pressure.cmWater())
            + " cmH₂O = "
            + one(pressure.mmMercury())
            + " mmHg = "
            + Printed.decimals(pressure.kiloPascal(), 2)
            + " kPa.";
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Paragraphs(List.of(Line.of(value))));
    blocks.add(new Table("Published ranges", List.of("Range", "limits", "verdict"), rows));
    if (!pressure.notes().isEmpty()) {
      blocks.add(new Items("", pressure.notes().stream().map(Line::of).toList()));
    }
    return new Section("Opening pressure", blocks);
  }

  private static String one(double value) {
    return Printed.decimals(value, 1);
  }

  private Section critical(List<CriticalValue> values) {
    List<Line> lines =
        values.stream()
            .map(
                v ->
                    new Line(
                        v.text()
                            + ". "
                            + (v.isUntold()
                                ? "Nobody is recorded as told."
                                : "Told: "
                                    + v.told().stream()
                                        .map(t -> told(t.told()) + delay(t.delay()))
                                        .collect(Collectors.joining("; "))
                                    + "."),
                        v.grounds()))
            .toList();
    return Section.of("Critical values, by the local list", new Items("", lines));
  }

  private static String delay(String delay) {
    return delay.isEmpty() ? "" : ", " + delay;
  }

  private String told(Told told) {
    return told.who() + told.at().map(at -> ", " + times.at(at)).orElse(", time not recorded");
  }

  private Section outstanding(List<Outstanding> results) {
    List<Row> rows =
        results.stream()
            .map(
                r ->
                    new Row(
                        List.of(
                            r.test().term(),
                            r.state().word(),
                            r.dueAt().map(times::at).orElse("not known"),
                            r.told().stream().map(this::told).collect(Collectors.joining("; "))),
                        r.grounds()))
            .toList();
    String asOf =
        plan.procedure().after().asOf().map(t -> "Results as of " + times.at(t)).orElse("Results");
    return Section.of(
        "Outstanding results", new Table(asOf, List.of("Test", "state", "due", "told"), rows));
  }

  private Section headache(HeadacheAssessment headache) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Paragraphs(List.of(Line.of(headache.conclusion()))));
    blocks.add(
        new Table(
            "Ask every question; an unanswered one counts as open",
            List.of("Question", "answer", "how urgent", "think of"),
            headache.redFlags().stream().flatMap(f -> rows(f).stream()).toList()));
    plan.procedure()
        .after()
        .headache()
        .filter(h -> !h.days().isEmpty())
        .map(AfterSections::days)
        .ifPresent(blocks::add);
    blocks.add(definitions(headache));
    return new Section("Headache after the puncture", blocks);
  }

  private static List<Row> rows(RedFlagAnswer flags) {
    return flags.asked().stream()
        .map(
            asked ->
                new Row(
                    List.of(
                        asked.flag().question(),
                        asked.answer().isKnown() ? asked.answer().word() : "open",
                        flags.urgency(),
                        flags.thinkOf()),
                    flags.grounds()))
        .toList();
  }

  private static Table days(HeadacheRecord headache) {
    List<Row> rows =
        headache.days().stream()
            .map(d -> Row.of("Day " + d.day(), Printed.decimals(d.severity(), 0)))
            .toList();
    return new Table("Day by day, 0 none to 10 worst", List.of("Day", "severity"), rows);
  }

  private static Table definitions(HeadacheAssessment headache) {
    return new Table(
        "Published definitions",
        List.of("Definition", "verdict", "because"),
        headache.definitions().stream()
            .map(
                d ->
                    new Row(
                        List.of(d.name(), d.verdict().replace('-', ' '), d.reason()), d.grounds()))
            .toList());
  }
}
