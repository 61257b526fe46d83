package cistern.clinic.sent;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.hidden;
import static cistern.clinic.web.Html.list;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.Json;
import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;

/**
 * What was sent, before it is put anywhere: what goes where, what is not understood, whose it is.
 */
public final class SentPage {

  /** The name of the field that carries what was sent. */
  public static final String SENT = "sent";

  private static final Map<String, String> BANDS =
      Map.of(
          "bands.csfOnly", "Bands in the fluid only",
          "bands.shared", "Bands in both",
          "bands.serumOnly", "Bands in the serum only",
          "bands.pattern", "Pattern of the bands",
          "bands.result", "Oligoclonal bands");

  private SentPage() {}

  /** A form that takes a file: chosen, or dropped anywhere on its page. */
  public static Element form(PageRequest visit, String action) {
    return visit
        .form(action)
        .with("enctype", "multipart/form-data")
        .with("class", "sending")
        .with("data-drop", "")
        .with(
            field(
                "A message (HL7, FHIR), a table (CSV, XLSX) or a printed report: choose it, drop it"
                    + " anywhere on this page, or paste it",
                Element.of("input").with("type", "file").with("name", SENT)));
  }

  /** The preview of what was sent against a case. */
  public static Node of(PageRequest visit, OpenCase open, SentIn sent, Facts facts) {
    List<Node> parts = new ArrayList<>();
    for (int i = 0; i < sent.understood().size(); i++) {
      Amendment amendment = new Amendment(open.file(), sent.understood().get(i), facts);
      int index = i;
      parts.add(
          preview(
              amendment,
              i,
              amendment
                  .refusal()
                  .<Node>map(why -> note("trouble", why).with("role", "alert"))
                  .orElseGet(() -> put(visit, open, sent, index))));
    }
    parts.add(problems(sent.problems()));
    return new Fragment(parts);
  }

  /**
   * The preview of what was sent before anybody has said where it goes.
   *
   * @param ways what can be done with a work-up in it, by its place
   */
  public static Node of(SentIn sent, Facts facts, IntFunction<Node> ways) {
    Json.Structure nothing = new Json.Structure(new LinkedHashMap<>());
    List<Node> parts = new ArrayList<>();
    for (int i = 0; i < sent.understood().size(); i++) {
      Amendment amendment = new Amendment(nothing, sent.understood().get(i), facts);
      parts.add(preview(amendment, i, ways.apply(i)));
    }
    parts.add(problems(sent.problems()));
    return new Fragment(parts);
  }

  /** Why something could not be read. */
  public static Node problems(List<InputProblem> problems) {
    return problems.isEmpty()
        ? nothing()
        : division(
                "trouble",
                Html.paragraph("This could not be read, and nothing of it is taken:"),
                list(problems.stream().map(p -> text(p.toText())).toList(), ""))
            .with("role", "alert");
  }

  private static Node preview(Amendment amendment, int index, Node ways) {
    String id = "sent-" + index;
    return section(
        id,
        "What was sent: " + amendment.whose().toText(),
        ways,
        changes(amendment),
        amendment.isGelInTheWay()
            ? note("doubt", "The bands that were sent are not taken: this case has a gel.")
            : nothing(),
        section(
            id + "-left",
            "Not understood, and kept in the file only",
            list(
                amendment.sent().workup().problems().stream()
                    .map(SentPage::words)
                    .map(Html::text)
                    .toList(),
                "Everything was understood.")));
  }

  private static String words(Problem problem) {
    return problem.place().isEmpty() ? problem.text() : problem.place() + ": " + problem.text();
  }

  private static Element put(PageRequest visit, OpenCase open, SentIn sent, int index) {
    return visit
        .form("/cases/" + open.version().caseId() + "/paste/put")
        .with(
            hidden(SENT, sent.toField()),
            hidden("reading", Integer.toString(index)),
            button("Put these results into " + open.name()));
  }

  private static Node changes(Amendment amendment) {
    List<List<Node>> rows =
        amendment.changes().stream()
            .map(c -> List.<Node>of(text(term(c.code())), text(c.now()), text(before(c))))
            .toList();
    return rows.isEmpty()
        ? note("empty", "No result.")
        : Html.table("What goes where", List.of("What", "As sent", "In this case until now"), rows);
  }

  private static String before(Amendment.SentValue change) {
    if (change.isSame()) {
      return "the same";
    }
    return change.before().isEmpty() ? "none" : change.before();
  }

  /** The name of a sample or of an answer on the bands in words, where its code is one. */
  private static String term(String code) {
    int dot = code.lastIndexOf('.');
    Optional<Analyte> analyte = Analyte.parse(code.substring(0, Math.max(0, dot)));
    Optional<Compartment> in = Compartment.parse(code.substring(dot + 1));
    return analyte.isPresent() && in.isPresent()
        ? new Sample(analyte.get(), in.get()).term()
        : BANDS.getOrDefault(code, code);
  }
}
