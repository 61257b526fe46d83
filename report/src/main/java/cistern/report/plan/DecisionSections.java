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
import cistern.report.wording.PrintedTime;
import cistern.urgent.Urgency;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is urgent, whether to go on, what stands in the way, and the drugs as typed. */
final class DecisionSections {

  private final PuncturePlan plan;
  private final PrintedTime times;

  DecisionSections(PuncturePlan plan, PrintedTime times) {
    this.plan = plan;
    this.times = times;
  }

  /** What holds, one sentence each; then what could hold of a fluid that was drawn. */
  List<Line> urgent() {
    List<Line> lines = new ArrayList<>();
    for (Urgency urgency : plan.urgent()) {
      if (urgency.holds()) {
        String answered =
            urgency
                .answered()
                .map(r -> " Answered by " + r.by() + ": " + r.reason() + ".")
                .orElse("");
        lines.add(new Line(urgency.words().toText() + answered, urgency.grounds()));
      }
    }
    String open =
        String.join(
            " ", plan.urgent().stream().filter(u -> !u.holds()).map(u -> u.words().say()).toList());
    if (plan.isDone() && !open.isEmpty()) {
      lines.add(Line.of("Not settled, ask now: " + open));
    }
    return lines;
  }

  /** Whether to go on, and why not. */
  Line verdict() {
    String because = String.join(" ", leading().stream().map(this::because).toList());
    String earliest =
        plan.decision()
            .verdict()
            .earliest()
            .map(t -> " Every printed interval will have passed by " + times.at(t) + ".")
            .orElse("");
    String go = plan.decision().verdict().go().text();
    return Line.of(go + (because.isEmpty() ? "." : ": " + because) + earliest);
  }

  /** The sentence of what leads; where it only repeats the verdict, its reasons. */
  private String because(Contraindication one) {
    String verdict = plan.decision().verdict().go().text();
    if (one.text().equals(verdict + ".")) {
      return String.join("; ", one.reasons()) + ".";
    }
    return one.text().startsWith(verdict + ": ")
        ? one.text().substring(verdict.length() + 2)
        : one.text();
  }

  /** What gives the verdict. */
  private List<Contraindication> leading() {
    return plan.decision().contraindications().stream()
        .filter(c -> c.asks() == plan.decision().verdict().go())
        .filter(c -> c.present().isYes())
        .toList();
  }

  /** What is present, by weight. */
  List<Line> present() {
    return lines(Answer.YES);
  }

  /** What is to be asked: names that nobody knows, then open questions, heaviest first. */
  List<Line> open() {
    List<Line> lines = new ArrayList<>();
    plan.bleeding().drugs().all().stream()
        .filter(t -> t.drug().entry().isEmpty())
        .map(t -> Line.of("What is “" + t.drug().typed() + "”?" + near(t)))
        .forEach(lines::add);
    lines.addAll(lines(Answer.UNKNOWN));
    return lines;
  }

  private static String near(TakenDrugs.Taken taken) {
    String near = String.join(", ", taken.drug().nearest());
    return near.isEmpty() ? "" : " Nearest known names: " + near + ".";
  }

  private List<Line> lines(Answer state) {
    return plan.decision().contraindications().stream()
        .filter(c -> c.present() == state)
        .filter(c -> c.asks() != Contraindication.Go.GO)
        .map(c -> new Line(line(c), c.grounds()))
        .toList();
  }

  private static String line(Contraindication one) {
    String reasons = String.join("; ", one.reasons());
    if (!one.present().isYes()) {
      return capital(reasons) + "?";
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
              ? "guideline by guideline below"
              : "ask the prescriber: no interval";
      case CLASS -> "ask which drug and dose";
      case ASKS -> "ask the prescriber";
      case NOTED -> "note";
      case NOT -> "no antithrombotic";
    };
  }

  private static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
