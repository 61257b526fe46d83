package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Drafts;
import cistern.clinic.cases.Saving;
import cistern.clinic.form.CaseStep;
import cistern.clinic.form.Typing;
import cistern.clinic.form.WrittenResults;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.workup.WorkupReading;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/** The form of each step: typed, looked at while it is typed, saved, and brought together. */
public final class StepScreen {

  private final CaseContext context;
  private final CaseFrame frame;

  private StepScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
  }

  /** The forms of all steps. */
  public static StepScreen of(CaseContext context) {
    return new StepScreen(context);
  }

  /** Their routes. */
  public List<Route> routes() {
    List<Route> routes = new ArrayList<>();
    for (CaseStep step : CaseStep.values()) {
      String path = "/cases/{id}/" + step.word();
      routes.add(Route.get(path, step.permission(), v -> page(v, step)));
      routes.add(Route.post(path, step.permission(), v -> save(v, step)));
      routes.add(Route.post(path + "/look", step.permission(), v -> look(v, step)));
      routes.add(Route.post(path + "/drop", step.permission(), v -> drop(v, step)));
    }
    routes.add(Route.post("/cases/{id}/results/row", CaseStep.RESULTS.permission(), this::unfold));
    return routes;
  }

  private ServerResponse page(PageRequest visit, CaseStep step) {
    return context
        .open(visit)
        .map(
            open ->
                Responses.page(
                    frame.toHtml(
                        visit,
                        open,
                        step.word(),
                        Element.of("h1", step.title()),
                        toNode(visit, open, step))))
        .orElseGet(() -> context.troubles().missing(visit));
  }

  /** The form of a step on a case as it stands, with what was typed and not saved. */
  Node toNode(PageRequest visit, OpenCase open, CaseStep step) {
    Optional<Drafts.Draft> draft = context.drafts().find(owner(visit, step));
    Map<String, String> typed = draft.map(d -> DraftText.parse(d.typed())).orElse(Map.of());
    long base = draft.map(Drafts.Draft::base).orElse(open.version().number());
    StepForm form = new StepForm(visit, open, step, base, typing(step, typed, open));
    Node said =
        draft
            .<Node>map(
                d ->
                    division(
                            "kept",
                            Html.paragraph(
                                "What you typed at "
                                    + context.time(d.at())
                                    + " was not saved; it stands in the form."),
                            visit
                                .form(path(visit, step) + "/drop")
                                .with(Html.button("Undo").with("class", "plain")))
                        .with("role", "status"))
            .orElse(nothing());
    return content(form, said, Map.of());
  }

  private java.time.ZoneId zone() {
    return context.medicine().zone();
  }

  private static String path(PageRequest visit, CaseStep step) {
    return "/cases/" + visit.path("id") + "/" + step.word();
  }

  private static Drafts.Owner owner(PageRequest visit, CaseStep step) {
    return new Drafts.Owner(visit.account().id(), visit.path("id"), step.word());
  }

  private String html(StepForm form, Node said, Map<String, String> notesByKey) {
    return frame.toHtml(
        form.visit(),
        form.open(),
        form.step().word(),
        Element.of("h1", form.step().title()),
        content(form, said, notesByKey));
  }

  private Node content(StepForm form, Node said, Map<String, String> notesByKey) {
    boolean isTable = form.step() == CaseStep.RESULTS;
    return Fragment.of(
        said,
        division(
            isTable ? "one" : "two",
            form.toElement(context, notesByKey),
            division("look", form.said(context)).with("id", "look").with("aria-live", "polite")),
        isTable
            ? Element.of(
                "details",
                Element.of("summary", "From a laboratory: drop, paste or choose a file"),
                PasteScreen.form(form.visit(), form.open(), ""))
            : nothing());
  }

  /** What is typed, field by field. */
  private static Map<String, String> typed(PageRequest visit) {
    Map<String, String> typed = new TreeMap<>();
    visit.fields().forEach((name, values) -> typed.put(name, values.getFirst().strip()));
    typed.remove("base");
    typed.remove(StepForm.NONE);
    typed.remove(Unfolded.FIELD);
    typed.remove(Unfolded.ROW);
    return typed;
  }

  private Optional<StepForm> form(PageRequest visit, CaseStep step) {
    Optional<OpenCase> open = context.open(visit);
    return open.map(
        o ->
            new StepForm(
                visit,
                o,
                step,
                base(visit, o),
                typing(step, typed(visit), o).noneOf(visit.field(StepForm.NONE), o.file())));
  }

  /** What is typed; results are brought into the form in which a file holds them. */
  private Typing typing(CaseStep step, Map<String, String> typed, OpenCase open) {
    Typing typing = Typing.of(step, typed, zone());
    return step == CaseStep.RESULTS
        ? typing.written(
            WrittenResults.of(context.medicine().facts(), context.units().of(open.file())),
            open.file())
        : typing;
  }

  private Optional<CaseVersion> base(StepForm form) {
    CaseVersion current = form.open().version();
    return form.base() == current.number()
        ? Optional.of(current)
        : context.cases().version(current.caseId(), form.base());
  }

  private static long base(PageRequest visit, OpenCase open) {
    String base = visit.field("base");
    return base.matches("\\d{1,9}") ? Long.parseLong(base) : open.version().number();
  }

  /** Keeps the draft, and shows what the program makes of what is typed. */
  private ServerResponse look(PageRequest visit, CaseStep step) {
    Optional<StepForm> form = form(visit, step);
    if (form.isEmpty()) {
      return context.troubles().missing(visit);
    }
    context.drafts().keep(owner(visit, step), form.get().base(), DraftText.of(typed(visit)));
    return Responses.page(form.get().look(context).toText());
  }

  /** Unfolds a row of the table without script; what is typed is kept as a draft. */
  private ServerResponse unfold(PageRequest visit) {
    Optional<StepForm> form = form(visit, CaseStep.RESULTS);
    if (form.isEmpty()) {
      return context.troubles().missing(visit);
    }
    if (!form.get().typing().isUnchanged(form.get().open().file())) {
      context
          .drafts()
          .keep(owner(visit, CaseStep.RESULTS), form.get().base(), DraftText.of(typed(visit)));
    }
    return Responses.see(Unfolded.toggled(visit, visit.field(Unfolded.ROW)));
  }

  private ServerResponse drop(PageRequest visit, CaseStep step) {
    context.drafts().drop(owner(visit, step));
    return Responses.see(path(visit, step));
  }

  private ServerResponse save(PageRequest visit, CaseStep step) {
    Optional<StepForm> found = form(visit, step);
    Optional<CaseVersion> base = found.flatMap(this::base);
    if (base.isEmpty()) {
      return context.troubles().missing(visit);
    }
    StepForm form = found.orElseThrow();
    Json.Structure before = file(base.get(), form.open());
    Map<String, String> collisions = form.typing().collisions(before, form.open().file());
    if (!collisions.isEmpty()) {
      return collided(form, collisions);
    }
    if (form.typing().isUnchanged(before) && form.typing().questions().isEmpty()) {
      context.drafts().drop(owner(visit, step));
      return Responses.see("/cases/" + visit.path("id"));
    }
    Json.Structure changed = applied(form, before);
    String text = JsonText.of(changed);
    return switch (context.medicine().read(text)) {
      case WorkupReading.NotValid notValid -> notValid(form, before, changed, notValid);
      case WorkupReading.Understood understood -> keep(form, before, text);
    };
  }

  private static Json.Structure applied(StepForm form, Json.Structure before) {
    Json.Structure changed = form.typing().applied(before, form.open().file());
    return TypedBands.of(form.open().file(), changed, form.visit().account().fullName());
  }

  /** What the form was opened on: mostly the case as it stands, which is read already. */
  private Json.Structure file(CaseVersion base, OpenCase open) {
    return base.number() == open.version().number()
        ? open.file()
        : context.recent().open(base).file();
  }

  private ServerResponse keep(StepForm form, Json.Structure before, String text) {
    PageRequest visit = form.visit();
    CaseVersion current = form.open().version();
    if (form.typing().isUnchanged(before)) {
      return partly(form, form.open(), "Not saved yet: see beside the marked fields.");
    }
    Change change = new Change(current.number(), form.step().word(), text, visit.account().id());
    return switch (context.cases().save(current.caseId(), change)) {
      case Saving.Kept kept -> kept(form, kept.version());
      // Somebody was faster by a moment: what they changed is brought together with this.
      case Saving.Collided collided -> save(visit, form.step());
    };
  }

  private ServerResponse kept(StepForm form, CaseVersion version) {
    context.drafts().drop(owner(form.visit(), form.step()));
    boolean isGoingOn = form.visit().fields().containsKey(StepForm.NONE);
    String next = "/cases/" + version.caseId();
    return form.typing().questions().isEmpty()
        ? Responses.see(isGoingOn ? next + "/" + form.step().word() : next)
        : partly(
            form,
            context.recent().open(version),
            "Saved, except what is marked: it stands below as you typed it.");
  }

  /** One field that cannot be read stops no other: the form again with what is asked. */
  private ServerResponse partly(StepForm form, OpenCase open, String words) {
    Typing aside =
        Typing.of(form.step(), form.typing().aside(), zone()).asking(form.typing().questions());
    context
        .drafts()
        .keep(
            owner(form.visit(), form.step()),
            open.version().number(),
            DraftText.of(form.typing().aside()));
    return Responses.page(
        HttpStatus.UNPROCESSABLE_CONTENT,
        html(
            form.on(open, aside),
            note("trouble", words).with("role", "alert"),
            form.typing().questions()));
  }

  /** The form again with everything that was typed, and beside each field what it is meanwhile. */
  private ServerResponse collided(StepForm form, Map<String, String> collisions) {
    String who = context.accounts().fullName(form.open().version().account());
    Map<String, String> notes = new TreeMap<>();
    collisions.forEach(
        (key, now) ->
            notes.put(
                key,
                (now.isEmpty() ? "Emptied" : "Set to “" + now + "”")
                    + " meanwhile by "
                    + who
                    + "; what stands here is what you typed."));
    StepForm again = form.withBase(form.open().version().number());
    Node said =
        note(
                "trouble",
                who
                    + " changed the same "
                    + (collisions.size() == 1 ? "field" : "fields")
                    + " while you typed. Nothing of yours is saved yet, and nothing of theirs is"
                    + " lost: look at the marked fields, then save what should stand.")
            .with("role", "alert");
    return Responses.page(HttpStatus.CONFLICT, html(again, said, notes));
  }

  private ServerResponse notValid(
      StepForm form, Json.Structure before, Json.Structure changed, WorkupReading.NotValid why) {
    Map<String, String> notes = new TreeMap<>();
    List<String> others = new ArrayList<>();
    StepLook.sort(why.problems(), form.typing(), changed, notes, others);
    StepForm asking =
        new StepForm(
            form.visit(), form.open(), form.step(), form.base(), form.typing().asking(notes));
    String text = JsonText.of(applied(asking, before));
    if (!notes.isEmpty() && context.medicine().read(text) instanceof WorkupReading.Understood) {
      return keep(asking, before, text);
    }
    Element said =
        division(
                "trouble",
                Html.paragraph(
                    "Not saved yet: something could not be read. What you typed stands below."),
                others.isEmpty()
                    ? Fragment.of()
                    : Html.list(others.stream().map(Html::text).toList(), ""))
            .with("role", "alert");
    return Responses.page(HttpStatus.UNPROCESSABLE_CONTENT, html(form, said, notes));
  }
}
