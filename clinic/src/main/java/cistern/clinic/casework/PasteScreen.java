package cistern.clinic.casework;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.list;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.Drafts;
import cistern.clinic.form.CaseStep;
import cistern.clinic.paste.PastedBlock;
import cistern.clinic.paste.PastedLine;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.ucum.Conversions;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.web.servlet.function.ServerResponse;

/** Pasting results: a preview of every line, then into the form of the results, not yet saved. */
public final class PasteScreen {

  private final CaseContext context;
  private final CaseFrame frame;
  private final PastedBlock reader;

  private PasteScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
    this.reader = PastedBlock.of(Conversions.of(context.medicine().facts()));
  }

  /** The screen for pasting. */
  public static PasteScreen of(CaseContext context) {
    return new PasteScreen(context);
  }

  /** Its routes. */
  public List<Route> routes() {
    return List.of(
        Route.get("/cases/{id}/paste", Permission.ENTER_RESULTS, v -> page(v, nothing())),
        Route.post("/cases/{id}/paste", Permission.ENTER_RESULTS, v -> page(v, preview(v))),
        Route.post("/cases/{id}/paste/take", Permission.ENTER_RESULTS, this::take));
  }

  private ServerResponse page(PageRequest visit, Node preview) {
    return context
        .open(visit)
        .map(open -> Responses.page(html(visit, open, preview)))
        .orElseGet(() -> context.troubles().missing(visit));
  }

  private String html(PageRequest visit, OpenCase open, Node preview) {
    return frame.toHtml(
        visit,
        open,
        CaseStep.RESULTS.word(),
        Element.of("h1", "Paste results"),
        preview,
        visit
            .form("/cases/" + open.version().caseId() + "/paste")
            .with(
                field(
                    "One result a line, such as: albumin CSF 204 mg/L; or a table with CSF and"
                        + " serum as columns",
                    Html.area("block", block(visit)).with("spellcheck", "false")),
                button("Preview")));
  }

  /** As it was pasted: a cell at the beginning may be empty. */
  private static String block(PageRequest visit) {
    return String.join("", visit.fields().getOrDefault("block", List.of()));
  }

  private Node preview(PageRequest visit) {
    List<PastedLine> lines = reader.read(block(visit));
    List<List<Node>> taken =
        lines.stream()
            .filter(PastedLine.Understood.class::isInstance)
            .map(PastedLine.Understood.class::cast)
            .map(u -> List.<Node>of(text(u.sample().term()), text(u.typed()), text(u.line())))
            .toList();
    List<Node> left =
        lines.stream()
            .filter(PastedLine.NotUnderstood.class::isInstance)
            .map(PastedLine.NotUnderstood.class::cast)
            .map(n -> (Node) Element.of("span", n.line()).withText(": " + n.reason()))
            .toList();
    return Html.division(
        "preview",
        section("left", "Not understood, and not taken", list(left, "Every line was understood.")),
        section(
            "taken",
            "Understood",
            taken.isEmpty()
                ? Html.note("empty", "Nothing yet.")
                : Html.table("As it will be typed", List.of("What", "Result", "Line"), taken)),
        taken.isEmpty() ? nothing() : takeForm(visit));
  }

  private static Node takeForm(PageRequest visit) {
    return visit
        .form("/cases/" + visit.path("id") + "/paste/take")
        .with(
            Element.of("input")
                .with("type", "hidden")
                .with("name", "block")
                .with("value", block(visit)),
            button("Put these into the form"));
  }

  /** What was understood becomes a draft of the results, which the person looks at and saves. */
  private ServerResponse take(PageRequest visit) {
    return context
        .open(visit)
        .map(
            open -> {
              Map<String, String> typed = new TreeMap<>();
              for (PastedLine line : reader.read(block(visit))) {
                if (line instanceof PastedLine.Understood understood) {
                  typed.put(understood.sample().code(), understood.typed());
                }
              }
              Drafts.Owner owner =
                  new Drafts.Owner(
                      visit.account().id(), open.version().caseId(), CaseStep.RESULTS.word());
              context.drafts().keep(owner, open.version().number(), DraftText.of(typed));
              return Responses.see("/cases/" + open.version().caseId() + "/results");
            })
        .orElseGet(() -> context.troubles().missing(visit));
  }
}
