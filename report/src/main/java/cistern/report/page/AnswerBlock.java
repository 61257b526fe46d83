package cistern.report.page;

import cistern.finding.Printed;
import cistern.interpretation.Interpretation;
import cistern.panel.Draw;
import cistern.panel.Pairing;
import cistern.panel.Person;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.statement.NextStep;
import cistern.statement.Statement;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What is concluded, how sure, the weakest link and the next step: before any number. */
final class AnswerBlock {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.UK);

  private AnswerBlock() {}

  /** Whose work-up it is and how it was taken. */
  static Node head(Interpretation interpretation) {
    List<String> parts = new ArrayList<>();
    Person person = interpretation.panel().panel().person();
    person.ageYears().ifPresent(a -> parts.add(age(a)));
    person.sex().ifPresent(parts::add);
    parts.add(drawn("CSF", interpretation.panel().panel().csf()));
    parts.add(serum(interpretation));
    return Html.division(
        "head",
        Element.of("h1", "CSF work-up " + interpretation.workup().id()),
        Html.paragraph(String.join(" · ", parts)).with("class", "taken"));
  }

  private static String age(double years) {
    return years == Math.rint(years)
        ? Printed.decimals(years, 0) + " years"
        : Printed.decimals(years, 1) + " years";
  }

  private static String drawn(String fluid, Draw draw) {
    Optional<OffsetDateTime> at = draw.at();
    return at.map(t -> fluid + " drawn " + TIME.format(t)).orElse(fluid + " draw time not given");
  }

  private static String serum(Interpretation interpretation) {
    Pairing pairing = interpretation.panel().pairing();
    if (pairing.hoursApart().isEmpty()) {
      return drawn("serum", interpretation.panel().panel().serum());
    }
    double hours = pairing.hoursApart().getAsDouble();
    String pair = "pair " + pairing.verdict().word();
    if (hours == 0) {
      return "serum at the same time, " + pair;
    }
    return "serum %s %s, %s".formatted(apart(hours), hours < 0 ? "earlier" : "later", pair);
  }

  private static String apart(double hours) {
    double size = Math.abs(hours);
    if (size < 1) {
      return Printed.decimals(size * 60, 0) + " min";
    }
    return size < 48 ? Printed.decimals(size, 1) + " h" : Printed.decimals(size / 24, 1) + " days";
  }

  /** The statements: the first as the answer, the rest under it, the next steps as a list. */
  static Node statements(List<Statement> statements) {
    List<Statement> next = statements.stream().filter(s -> s instanceof NextStep).toList();
    List<Statement> said = statements.stream().filter(s -> !(s instanceof NextStep)).toList();
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < said.size(); i++) {
      nodes.add(
          Html.paragraph(said.get(i).text())
              .with("class", (i == 0 ? "answer " : "statement ") + said.get(i).code()));
    }
    if (!next.isEmpty()) {
      nodes.add(
          Html.division(
              "next",
              Element.of("h2", "Next").with("id", "next"),
              Html.list(next, s -> new cistern.report.markup.Text(s.text()))));
    }
    return new Fragment(nodes);
  }
}
