package cistern.clinic.casework;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.list;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Drafts;
import cistern.clinic.cases.Saving;
import cistern.clinic.form.CaseStep;
import cistern.clinic.paste.PastedBlock;
import cistern.clinic.paste.PastedLine;
import cistern.clinic.sent.Amendment;
import cistern.clinic.sent.SentIn;
import cistern.clinic.sent.SentPage;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.json.JsonText;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.workup.WorkupReading;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.springframework.web.servlet.function.ServerResponse;

/** Pasting results: a preview of every line, then into the form of the results, not yet saved. */
public final class PasteScreen {

  private final CaseContext context;
  private final CaseFrame frame;

  private PasteScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
  }

  private PastedBlock reader() {
    return PastedBlock.of(Conversions.of(context.medicine().facts()));
  }

  /** The screen for pasting. */
  public static PasteScreen of(CaseContext context) {
    return new PasteScreen(context);
  }

  /** Its routes. */
  public List<Route> routes() {
    return List.of(
        Route.get("/cases/{id}/paste", Permission.ENTER_RESULTS, v -> page(v, open -> nothing())),
        Route.post(
            "/cases/{id}/paste", Permission.ENTER_RESULTS, v -> page(v, open -> preview(v, open))),
        Route.post("/cases/{id}/paste/put", Permission.ENTER_RESULTS, this::put),
        Route.post("/cases/{id}/paste/take", Permission.ENTER_RESULTS, this::take));
  }

  private ServerResponse page(PageRequest visit, Function<OpenCase, Node> preview) {
    return context
        .open(visit)
        .map(open -> Responses.page(html(visit, open, preview.apply(open))))
        .orElseGet(() -> context.troubles().missing(visit));
  }

  private String html(PageRequest visit, OpenCase open, Node preview) {
    return frame.toHtml(
        visit,
        open,
        CaseStep.RESULTS.word(),
        Element.of("h1", "Results from a laboratory"),
        preview,
        form(visit, open, block(visit)));
  }

  /** Takes a message, a table or a printed report: chosen, dropped on the page, or pasted. */
  static Element form(PageRequest visit, OpenCase open, String block) {
    return SentPage.form(visit, "/cases/" + open.version().caseId() + "/paste")
        .with(
            field(
                "Or here, one result a line, such as: albumin CSF 204 mg/L; or a table with CSF and"
                    + " serum as columns",
                Html.area("block", block).with("spellcheck", "false")),
            button("Preview"));
  }

  /** As it was pasted: a cell at the beginning may be empty. */
  private static String block(PageRequest visit) {
    return String.join("", visit.fields().getOrDefault("block", List.of()));
  }

  private Node preview(PageRequest visit, OpenCase open) {
    List<PastedLine> lines = reader().read(block(visit));
    SentIn sent = SentIn.read(SentIn.content(visit, block(visit)), context.medicine());
    return isBetterAs(sent, lines)
        ? SentPage.of(visit, open, sent, context.medicine().facts())
        : lines(visit, lines);
  }

  /** A few lines are read as lines; what only the readers of messages and tables know is sent. */
  private static boolean isBetterAs(SentIn sent, List<PastedLine> lines) {
    long typed = lines.stream().filter(PastedLine.Understood.class::isInstance).count();
    long read =
        sent.understood().stream().mapToLong(u -> u.workup().panel().results().size()).sum();
    boolean isNoLines = typed == 0 && !sent.understood().isEmpty();
    return read > typed || lines.isEmpty() || isNoLines;
  }

  private static Node lines(PageRequest visit, List<PastedLine> lines) {
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
        .with(Html.hidden("block", block(visit)), button("Put these into the form"));
  }

  /** What was sent becomes the next version of the case; every earlier one stays readable. */
  private ServerResponse put(PageRequest visit) {
    Optional<OpenCase> found = context.open(visit);
    SentIn sent = SentIn.read(SentIn.fromField(visit.field(SentPage.SENT)), context.medicine());
    String index = visit.field("reading");
    int which = index.matches("\\d{1,4}") ? Integer.parseInt(index) : 0;
    if (found.isEmpty() || which >= sent.understood().size()) {
      return context.troubles().missing(visit);
    }
    OpenCase open = found.get();
    Amendment amendment =
        new Amendment(open.file(), sent.understood().get(which), context.medicine().facts());
    return amendment.refusal().isPresent()
        ? page(visit, o -> SentPage.of(visit, o, sent, context.medicine().facts()))
        : put(visit, open, amendment);
  }

  private ServerResponse put(PageRequest visit, OpenCase open, Amendment amendment) {
    String by = visit.account().fullName();
    String text = JsonText.of(TypedBands.of(open.file(), amendment.amended(), by));
    Change change =
        new Change(open.version().number(), "results that were sent", text, visit.account().id());
    return switch (context.medicine().read(text)) {
      case WorkupReading.NotValid notValid ->
          page(visit, o -> SentPage.problems(notValid.problems()));
      case WorkupReading.Understood understood ->
          switch (context.cases().save(open.version().caseId(), change)) {
            case Saving.Kept kept -> Responses.see("/cases/" + open.version().caseId());
            case Saving.Collided collided -> put(visit);
          };
    };
  }

  /** What was understood becomes a draft of the results, which the person looks at and saves. */
  private ServerResponse take(PageRequest visit) {
    return context
        .open(visit)
        .map(
            open -> {
              Map<String, String> typed = new TreeMap<>();
              for (PastedLine line : reader().read(block(visit))) {
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
