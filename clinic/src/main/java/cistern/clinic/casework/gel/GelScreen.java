package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.paragraph;

import cistern.bands.BandReport.GelNamed;
import cistern.clinic.account.Permission;
import cistern.clinic.cases.Drafts;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.casework.CaseFrame;
import cistern.clinic.casework.gel.GelForms.Typed;
import cistern.clinic.gel.Gels;
import cistern.clinic.gel.KeptReading;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.KeptForm;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.clinic.web.Session;
import cistern.fact.Facts;
import cistern.gel.overlay.LaneWindow;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.springframework.web.servlet.function.ServerResponse;

/** The gel of a case: its picture, its bands, what the program made of them, and what people do. */
public final class GelScreen {

  static final String STEP = "gel";

  private final CaseContext context;
  private final CaseFrame frame;
  private final GelChanges changes;
  private final LaneChanges lanes;
  private final PlacedBy placedBy;

  private GelScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
    this.changes = new GelChanges(context, this);
    this.lanes = new LaneChanges(context, this, changes);
    this.placedBy = new PlacedBy(context);
  }

  /** The screen of a case's gel. */
  public static GelScreen of(CaseContext context) {
    return new GelScreen(context);
  }

  /** Its routes. */
  public List<Route> routes() {
    String path = "/cases/{id}/gel";
    return List.of(
        Route.get(path, Permission.ENTER_RESULTS, this::page),
        Route.post(path, Permission.ENTER_RESULTS, changes::upload),
        Route.post(path + "/take", Permission.ENTER_RESULTS, changes::take),
        Route.post(path + "/save", Permission.ENTER_RESULTS, changes::save),
        Route.post(path + "/confirm", Permission.WORK_UP, changes::confirm),
        Route.post(path + "/draw", Permission.ENTER_RESULTS, changes::draw),
        Route.post(path + "/lanes", Permission.ENTER_RESULTS, lanes::place),
        Route.post(path + "/lanes/back", Permission.ENTER_RESULTS, lanes::back),
        Route.post(path + "/lanes/forth", Permission.ENTER_RESULTS, lanes::forth),
        Route.post(path + "/look", Permission.ENTER_RESULTS, this::look),
        Route.post(path + "/drop", Permission.ENTER_RESULTS, this::drop),
        Route.get(path + "/{reading}/{part}", Permission.ENTER_RESULTS, this::part));
  }

  private ServerResponse page(PageRequest visit) {
    Optional<OpenCase> open = context.open(visit);
    if (open.isEmpty()) {
      return context.troubles().missing(visit);
    }
    return Responses.page(
        Session.take(visit.request().servletRequest())
            .map(left -> again(visit, open.get(), left))
            .orElseGet(() -> html(visit, open.get(), nothing())));
  }

  /** The form of a picture that was sent when the session had ended. */
  private String again(PageRequest visit, OpenCase open, KeptForm left) {
    Node said =
        note(
                "trouble",
                "The session had ended when you sent the picture, and a file cannot be kept: choose"
                    + " it again. What you typed stands in the form.")
            .with("role", "alert");
    return html(visit, open, said, Typed.of(left.field(GelForms.LANES), left.field(GelForms.PAIR)));
  }

  private String html(PageRequest visit, OpenCase open, Node said) {
    Optional<GelCase> read = GelCase.of(open, context);
    if (read.isEmpty()) {
      return html(visit, open, said, typed(open));
    }
    GelCase saved = read.get();
    return drafted(visit, saved)
        .map(
            draft ->
                html(visit, draft, division("notes", said, keptNote(visit, draft, saved.edit()))))
        .orElseGet(() -> html(visit, Shown.of(saved, saved.edit()), said));
  }

  /**
   * A gel and what stands in its fields.
   *
   * @param gel with the lanes as they were placed
   * @param edit of the bands
   * @param drawn what is typed of those that were missed
   * @param lanes what is typed of the lanes
   */
  record Shown(GelCase gel, GelEdit edit, DrawnPlace drawn, LanesTyped lanes) {

    static Shown of(GelCase gel, GelEdit edit) {
      return new Shown(
          gel, edit, DrawnPlace.NONE, LanesTyped.of(gel.reading(), gel.named().pair()));
    }

    Shown with(DrawnPlace typed) {
      return new Shown(gel, edit, typed, lanes);
    }

    Shown with(LanesTyped typed) {
      return new Shown(gel, edit, drawn, typed);
    }
  }

  /** The screen with bands to keep or strike, and lanes to name and place. */
  String html(PageRequest visit, Shown shown, Node said) {
    GelCase gel = shown.gel();
    GelPage.Fields fields = new GelPage.Fields(shown.drawn(), shown.lanes(), placer(visit, gel));
    GelPage page = new GelPage(visit, gel, shown.edit(), fields, context);
    return frame.toHtml(
        visit,
        gel.open(),
        STEP,
        Element.of("h1", "Gel"),
        note("unseen", "").with("id", "gel-said").with("role", "status"),
        division("gel-all", said, page.toNode()).with("id", "gel-all"));
  }

  /** Who placed the lanes as they are shown: whoever looks, or who saved them so. */
  private String placer(PageRequest visit, GelCase gel) {
    return gel.isSaved() && gel.isPlaced()
        ? context.accounts().fullName(placedBy.account(gel.open().version()))
        : visit.account().fullName();
  }

  /** The screen on which a picture is sent. */
  String html(PageRequest visit, OpenCase open, Node said, Typed typed) {
    String path = "/cases/" + open.version().caseId() + "/gel";
    Node missing = GelCase.of(open, context).isPresent() ? here(path) : missing(open);
    return frame.toHtml(
        visit,
        open,
        STEP,
        Element.of("h1", "Gel"),
        said,
        missing,
        GelForms.upload(visit, path, open.version().number(), typed));
  }

  private static Node here(String path) {
    return paragraph("The gel that belongs to this case stays until another picture is read. ")
        .with(Html.link(path, "To the gel as it stands"));
  }

  private Node missing(OpenCase open) {
    return GelCase.named(open, context)
        .<Node>map(
            named ->
                note(
                    "trouble",
                    "The work-up names the picture “"
                        + named.file()
                        + "”, which is not here: send it, and it is read."))
        .orElseGet(() -> note("empty", "No picture of a gel belongs to this case yet."));
  }

  private Typed typed(OpenCase open) {
    return GelCase.named(open, context).map(GelScreen::typed).orElseGet(() -> Typed.of("", ""));
  }

  private static Typed typed(GelNamed named) {
    return Typed.of(String.join(",", named.lanes()), named.pair() + "");
  }

  /** The screen on which this person's pair is chosen. */
  String toChoose(PageRequest visit, OpenCase open, KeptReading kept) {
    String path = "/cases/" + open.version().caseId() + "/gel";
    GelReading reading = Gels.read(kept, context.medicine().facts());
    return frame.toHtml(
        visit,
        open,
        STEP,
        Element.of("h1", "Gel"),
        paragraph(
            "The picture holds "
                + reading.pairs().size()
                + " pairs of lanes. Nothing is taken into the case until you say which one is this"
                + " person's."),
        GelForms.choose(visit, path, kept.picture(), open.version().number(), reading),
        GelPage.overview(reading, -1, path + "/" + kept.id() + "/whole"));
  }

  /** Who has a picture read now. */
  Gels.Asker asker(PageRequest visit) {
    return new Gels.Asker(
        visit.account().id(), context.medicine().madeBy(), context.medicine().facts());
  }

  private static Drafts.Owner owner(PageRequest visit) {
    return new Drafts.Owner(visit.account().id(), visit.path("id"), STEP);
  }

  void dropDraft(PageRequest visit) {
    context.drafts().drop(owner(visit));
  }

  /** What was kept or struck and not saved, when the gel is still the one that it was about. */
  private Optional<Shown> drafted(PageRequest visit, GelCase saved) {
    return context
        .drafts()
        .find(owner(visit))
        .filter(d -> isSameGel(saved, d.base()))
        .map(d -> GelTyping.parse(d.typed()))
        .flatMap(
            typed -> saved.with(typed.placings(), context).map(gel -> shown(visit, gel, typed)));
  }

  /** A form as it was sent, to be shown again. */
  Shown sentBack(PageRequest visit, GelCase gel) {
    return shown(visit, gel, GelTyping.of(visit.fields()));
  }

  private Shown shown(PageRequest visit, GelCase gel, GelTyping typed) {
    return Shown.of(gel, edit(visit, gel, typed)).with(DrawnPlace.of(typed.missed()));
  }

  /** Whether the bands stand as they did in an earlier version. */
  boolean isSameGel(GelCase gel, long base) {
    return context
        .cases()
        .version(gel.open().version().caseId(), base)
        .map(context.recent()::open)
        .map(OpenCase::file)
        .map(BandsMember::of)
        .filter(gel.bands()::equals)
        .isPresent();
  }

  private static Node keptNote(PageRequest visit, Shown draft, GelEdit saved) {
    Placings placings = draft.gel().placings();
    boolean isEdited = !draft.edit().equals(saved) || !draft.drawn().typed().isEmpty();
    if (!placings.done().isEmpty()) {
      return keptNote(
          visit,
          draft.gel(),
          "Read again with the lanes as you placed them. Nothing of it is saved until you confirm or"
              + " save it.");
    }
    if (isEdited) {
      return keptNote(
          visit,
          draft.gel(),
          "What you kept, struck or drew here was not saved; it stands in the form.");
    }
    return placings.undone().isEmpty()
        ? nothing()
        : keptNote(
            visit,
            draft.gel(),
            "The lanes and bands stand as they are saved; what you placed and undid can be placed"
                + " again.");
  }

  private static Node keptNote(PageRequest visit, GelCase gel, String words) {
    return division(
            "kept",
            paragraph(words),
            visit
                .form(gel.path() + "/drop")
                .with(Html.button("Back to what is saved").with("class", "plain")))
        .with("role", "status");
  }

  /** The gel that a form was about, with the lanes as they were placed in it. */
  Optional<GelCase> sent(PageRequest visit) {
    return context
        .open(visit)
        .flatMap(open -> GelCase.of(open, context))
        .flatMap(gel -> sent(visit, gel));
  }

  /**
   * Where the gel has changed meanwhile it stands as it was saved, for the conflict to be shown.
   */
  private Optional<GelCase> sent(PageRequest visit, GelCase saved) {
    Optional<GelCase> placed = saved.with(GelTyping.of(visit.fields()).placings(), context);
    return placed.isPresent() || isSameGel(saved, GelChanges.base(visit, saved.open()))
        ? placed
        : Optional.of(saved);
  }

  /** What a form says of the bands. */
  GelEdit typed(PageRequest visit, GelCase gel) {
    return edit(visit, gel, GelTyping.of(visit.fields()));
  }

  /** What stands in a form that a person sent or left. */
  GelEdit edit(PageRequest visit, GelCase gel, GelTyping typed) {
    return typed.toEdit(gel, gel.savedAdded(context), visit.account().fullName());
  }

  private ServerResponse look(PageRequest visit) {
    Optional<GelCase> found = sent(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    GelCase gel = found.get();
    keepDraft(visit, GelChanges.base(visit, gel.open()), GelTyping.of(visit.fields()));
    GelEdit edit = typed(visit, gel);
    Facts facts = context.medicine().facts();
    Node chances =
        PatternChances.of(gel, edit, facts).map(PatternChances::toFollow).orElse(nothing());
    return Responses.page(Fragment.of(BandChoices.counts(gel, edit, facts), chances).toText());
  }

  void keepDraft(PageRequest visit, long base, GelTyping typed) {
    context.drafts().keep(owner(visit), base, typed.toDraft());
  }

  private ServerResponse drop(PageRequest visit) {
    dropDraft(visit);
    return Responses.see("/cases/" + visit.path("id") + "/gel");
  }

  /** A part of what is kept: the lanes of a pair, all lanes, the picture, the reading. */
  private ServerResponse part(PageRequest visit) {
    Optional<KeptReading> kept =
        context.open(visit).flatMap(open -> context.gels().reading(visit.path("reading")));
    return kept.flatMap(k -> part(k, visit.path("part")))
        .orElseGet(() -> context.troubles().missing(visit));
  }

  private Optional<ServerResponse> part(KeptReading kept, String part) {
    return switch (part) {
      case "picture" ->
          context
              .gels()
              .bytes(kept.picture())
              .map(b -> Responses.file("application/octet-stream", kept.picture(), b));
      case "reading" ->
          Optional.of(
              Responses.file(
                  "application/json",
                  "reading-" + kept.id() + ".json",
                  kept.text().getBytes(StandardCharsets.UTF_8)));
      default -> window(kept, part);
    };
  }

  private Optional<ServerResponse> window(KeptReading kept, String part) {
    GelReading reading = Gels.read(kept, context.medicine().facts());
    List<LaneReading> lanes =
        reading.lanes().stream().filter(l -> part.equals("whole") || isOf(l, part)).toList();
    return lanes.isEmpty()
        ? Optional.empty()
        : context
            .gels()
            .picture(kept.picture(), context.medicine().facts())
            .map(p -> Responses.picture(LaneWindow.of(reading, lanes).toPng(p)));
  }

  private static boolean isOf(LaneReading lane, String pair) {
    return lane.pair().isPresent() && Integer.toString(lane.pair().getAsInt()).equals(pair);
  }
}
