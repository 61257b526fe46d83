package cistern.report.plan;

import cistern.measurement.Answer;
import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.TakenDrugs;
import cistern.puncture.decision.Contraindication;
import cistern.puncture.drug.DrugEntry;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import cistern.urgent.Urgency;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is urgent, whether to go on, what stands in the way, and the drugs as typed. */
final class DecisionSections {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm (xxx)", Locale.UK);

  private final PuncturePlan plan;

  DecisionSections(PuncturePlan plan) {
    this.plan = plan;
  }

  /** What holds and nobody has answered, one sentence each; then what could hold. */
  List<Line> urgent() {
    List<Line> lines = new ArrayList<>();
    for (Urgency urgency : plan.urgent()) {
      if (urgency.holds()) {
        String answered =
            urgency
                .answered()
                .map(r -> " Answered by " + r.by() + ": " + r.reason() + ".")
                .orElse("");
        lines.add(
            new Line(
                urgency.words().say() + " " + urgency.words().act() + answered, urgency.grounds()));
      }
    }
    String open =
        String.join(
            " ", plan.urgent().stream().filter(u -> !u.holds()).map(u -> u.words().say()).toList());
    if (!open.isEmpty()) {
      lines.add(Line.of("Not settled, ask now: " + open));
    }
    return lines;
  }

  /** Whether to go on, and why not. */
  Line verdict() {
    String because = String.join(" ", leading().stream().map(Contraindication::text).toList());
    String earliest =
        plan.decision()
            .verdict()
            .earliest()
            .map(t -> " Every printed interval has passed on " + time(t) + ".")
            .orElse("");
    String go = plan.decision().verdict().go().text();
    return Line.of(go + (because.isEmpty() ? "." : ": " + because) + earliest);
  }

  /** What gives the verdict. */
  private List<Contraindication> leading() {
    return plan.decision().contraindications().stream()
        .filter(c -> c.asks() == plan.decision().verdict().go())
        .filter(c -> c.present().isYes())
        .toList();
  }

  /** What is present, and what is open. */
  List<Section> first() {
    List<Line> present = lines(Answer.YES);
    List<Line> open = lines(Answer.UNKNOWN);
    List<Section> all = new ArrayList<>();
    if (!present.isEmpty()) {
      all.add(Section.of("What stands in the way, by weight", new Items("", present)));
    }
    if (!open.isEmpty()) {
      all.add(Section.of("Open: ask", new Items("", open)));
    }
    return all;
  }

  private List<Line> lines(Answer state) {
    return plan.decision().contraindications().stream()
        .filter(c -> c.present() == state)
        .filter(c -> state == Answer.YES || c.asks() != Contraindication.Go.GO)
        .map(c -> new Line(line(c), c.grounds()))
        .toList();
  }

  private static String line(Contraindication one) {
    String reasons = String.join("; ", one.reasons());
    if (!one.present().isYes()) {
      return "Ask: " + reasons + ".";
    }
    return one.text() + (reasons.isEmpty() ? "" : " (" + reasons + ")") + " " + one.instead();
  }

  /** Every drug as it was typed. */
  Section drugs() {
    List<Row> rows = plan.bleeding().drugs().all().stream().map(DecisionSections::row).toList();
    if (rows.isEmpty()) {
      return Section.of(
          "Drugs as typed",
          new Items(
              "",
              List.of(
                  Line.of(
                      plan.bleeding().drugs().isAsked()
                          ? "None is recorded."
                          : "Nobody has asked which drugs are taken."))));
    }
    return Section.of(
        "Drugs as typed",
        new Table("Name by name", List.of("Typed", "recognised as", "what follows"), rows),
        new Items(
            "",
            List.of(
                Line.of("Creatinine clearance: " + plan.bleeding().clearance().toText() + "."))));
  }

  private static Row row(TakenDrugs.Taken taken) {
    if (taken.drug().entry().isEmpty()) {
      String near = String.join(", ", taken.drug().nearest());
      return Row.of(
          taken.drug().typed(),
          "not a known name",
          "ask what it is" + (near.isEmpty() ? "" : "; nearest known names: " + near));
    }
    DrugEntry entry = taken.drug().entry().get();
    String note = entry.note().isEmpty() ? "" : entry.note();
    return new Row(
        List.of(
            taken.drug().typed(),
            entry.name(),
            follows(taken, entry) + (note.isEmpty() ? "" : "; " + note)),
        entry.grounds());
  }

  private static String follows(TakenDrugs.Taken taken, DrugEntry entry) {
    return switch (entry.kind()) {
      case TAKEN, COMBINATION ->
          taken.drug().intervals().isPresent()
              ? "intervals in the annex"
              : "ask the prescriber: no interval";
      case CLASS -> "ask which drug and dose";
      case ASKS -> "ask the prescriber";
      case NOTED -> "note";
      case NOT -> "no antithrombotic";
    };
  }

  static String time(OffsetDateTime time) {
    return TIME.format(time);
  }
}
