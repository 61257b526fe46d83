package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.paragraph;
import static cistern.clinic.web.Html.section;

import cistern.bands.BandReport;
import cistern.clinic.account.Permission;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.casework.gel.GelForms.Typed;
import cistern.clinic.status.Duty;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.fact.Facts;
import cistern.gel.overlay.DensityCurve;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.PairReading;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What stands on the screen of a gel that was read.
 *
 * @param visit who looks
 * @param gel the case and its reading
 * @param edit what stands in the fields
 * @param fields what is typed beside them
 * @param context the facts in force and the pictures that are kept
 */
record GelPage(PageRequest visit, GelCase gel, GelEdit edit, Fields fields, CaseContext context) {

  private static final String BANDS_FORM = "bands-form";

  /**
   * What is typed beside the bands.
   *
   * @param drawn places of bands that were missed
   * @param lanes of the whole gel
   * @param placer who placed the lanes, when somebody did
   */
  record Fields(DrawnPlace drawn, LanesTyped lanes, String placer) {}

  Node toNode() {
    Optional<EditedPair> bands = gel.bandsKept(edit);
    return Fragment.of(
        status(),
        bands.map(this::work).orElseGet(() -> unpaired()),
        trouble(),
        whole(),
        PatternChances.of(gel, edit, facts()).map(PatternChances::toNode).orElse(nothing()),
        again(),
        kept());
  }

  private Facts facts() {
    return context.medicine().facts();
  }

  /** The version that the forms are opened on. */
  private long base() {
    return gel.open().version().number();
  }

  /** Whether somebody stands behind it, and what that means. */
  private Node status() {
    if (!gel.isSaved()) {
      return nothing();
    }
    BandReport report = gel.open().interpretation().bands().report();
    boolean isTyped = report instanceof BandReport.Counted;
    if (gel.named().confirmedBy().isPresent()) {
      return Fragment.of(
          note(
              "said",
              "Confirmed by "
                  + gel.named().confirmedBy().get()
                  + (isTyped ? ", with a person's counts instead of what was read" : ", as read")
                  + (gel.isPlaced() ? ", the lanes placed by " + fields.placer() + "." : ".")),
          next());
    }
    return note(
        "said",
        isTyped
            ? "Counts were typed beside this gel and stand. Nobody has confirmed the reading."
            : "Read by the program and not confirmed: until a clinician confirms it, the criteria"
                + " see the bands as unknown.");
  }

  /** Where whoever confirms one gel after the other goes on. */
  private Node next() {
    return context.summaries().waiting(Duty.GEL, 2).stream()
        .filter(waiting -> !waiting.caseId().equals(gel.open().version().caseId()))
        .filter(waiting -> visit.isAllowed(Permission.WORK_UP))
        .findFirst()
        .<Node>map(
            waiting ->
                note("next", "The next gel to confirm: ")
                    .with(link("/cases/" + waiting.caseId() + "/gel", waiting.name())))
        .orElse(nothing());
  }

  private Node work(EditedPair bands) {
    String path = gel.path();
    Element form =
        visit
            .form(path + "/save")
            .with("class", "bands-form")
            .with("id", BANDS_FORM)
            .with("data-keep", path)
            .with("data-look", "look")
            .with("data-look-at", path + "/look")
            .with("data-look-now", "yes")
            .with(GelForms.base(base()), placed())
            .with(BandChoices.fields(gel, bands, fields.drawn()))
            .with(ladder(), words(), outcome(path));
    return Fragment.of(
        others(),
        division("gel", Element.of("figure", GelView.tools(), picture(bands), caption()), form));
  }

  private static Node words() {
    return note(
        "quiet",
        "Signal-to-noise: how far a band stands above the unevenness around it. Serum response: how"
            + " much of the band the serum shows at the same place.");
  }

  /** The lanes with their curves in a frame, in which they are scrolled when they are larger. */
  private Node picture(EditedPair bands) {
    List<DensityCurve> curves =
        context
            .gels()
            .curves(gel.kept(), List.of(bands.read().csf(), bands.read().serum()), facts());
    return division("gel-frame", GelFigure.pair(gel.reading(), bands, curves, told(bands)))
        .with("tabindex", "0")
        .with("role", "region")
        .with("aria-label", "Picture of the pair with its density curves");
  }

  private static Node caption() {
    return Element.of(
        "figcaption",
        "Filled: stands alone. Open, joined: in both lanes. Crossed out: struck. Broken line:"
            + " drawn in. Beside the lanes the density along each, on one scale. A press on a mark"
            + " keeps or strikes its band; a press in a lane draws in a missed one; an edge is"
            + " dragged to where its lane ends.");
  }

  /** On a gel of several people, whose bands these are. */
  private Node others() {
    int pairs = gel.reading().pairs().size();
    return pairs < 2
        ? nothing()
        : note(
            "others",
            "This gel holds "
                + pairs
                + " pairs of lanes. Only this person's is changed here, "
                + gel.pair().map(p -> "pair " + GelForms.words(p)).orElse("")
                + "; the bands of every other pair are changed in the case that it belongs to.");
  }

  private GelFigure.Told told(EditedPair bands) {
    String counted =
        "%d bands were read in the fluid and %d in the serum"
            .formatted(bands.read().csf().bands().size(), bands.read().serum().bands().size());
    return new GelFigure.Told(
        source(Integer.toString(gel.named().pair())),
        counted,
        counted + ". Each is listed beside the picture with its counterpart and its reason.");
  }

  private String source(String part) {
    return gel.path() + "/" + gel.kept().id() + "/" + part;
  }

  private Element ladder() {
    Element box =
        Element.of("input")
            .with("type", "checkbox")
            .with("name", GelTyping.LADDER)
            .with("value", GelTyping.YES)
            .with("id", "ladder");
    return division(
        "band",
        edit.isLadder() ? box.with("checked", "checked") : box,
        Element.of("label", "A close, regular ladder in both lanes (pattern 5)")
            .with("for", "ladder"));
  }

  /** What the kept bands amount to, and beside it the confirming: always in sight. */
  private Node outcome(String path) {
    return division(
        "outcome",
        division("look counts", BandChoices.counts(gel, edit, facts()))
            .with("id", "look")
            .with("aria-live", "polite"),
        division("actions", buttons(path)));
  }

  private Node buttons(String path) {
    Node confirm =
        visit.isAllowed(Permission.WORK_UP)
            ? button("Confirm as " + visit.account().fullName())
                .with("formaction", path + "/confirm")
            : note("quiet", "A clinician confirms the reading.");
    return Fragment.of(confirm, button("Save without confirming").with("class", "second-button"));
  }

  private Node unpaired() {
    return note(
        "trouble",
        "This pair cannot be counted: "
            + gel.pair().map(p -> words(p.problems())).orElse("the reading holds no such pair")
            + ". Name and place the lanes below, send another picture, or type the counts under"
            + " “Bands”.");
  }

  /** The lanes as they were placed, which go with every form. */
  private Node placed() {
    Placings all = gel.placings();
    return new Fragment(
        Stream.concat(hidden(Placings.DONE, all.done()), hidden(Placings.UNDONE, all.undone()))
            .toList());
  }

  private static Stream<Node> hidden(String name, List<Placement> placements) {
    return placements.stream().map(placement -> Html.hidden(name, placement.toText()));
  }

  private static String words(List<GelProblem> problems) {
    return String.join("; ", problems.stream().map(GelProblem::text).toList());
  }

  private Node trouble() {
    List<String> ofGel = gel.reading().problems().stream().map(GelProblem::text).toList();
    List<String> ofPair =
        gel.pair().map(PairReading::review).orElse(List.of()).stream()
            .filter(reason -> ofGel.stream().noneMatch(text -> text.startsWith(reason)))
            .toList();
    boolean isStopped = gel.pair().filter(p -> p.pattern().isEmpty()).isPresent();
    List<Node> lines = new ArrayList<>();
    Stream.concat(ofPair.stream(), ofGel.stream())
        .forEach(text -> lines.add(Html.text(sentence(text))));
    if (isStopped) {
      lines.add(
          Html.text(
              "The program gives no pattern for this pair, and confirming keeps it undetermined:"
                  + " counts of your own are typed under “Bands”."));
    }
    return section("to-look-at", "To look at", Html.list(lines, "Nothing was noticed."));
  }

  private static String sentence(String text) {
    return text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1) + ".";
  }

  /** All lanes, to be named, paired and placed. */
  private Node whole() {
    boolean isPaired = gel.bandsKept(edit).isPresent();
    Node form =
        isPaired
            ? nothing()
            : visit
                .form(gel.path() + "/lanes")
                .with("id", "lanes-form")
                .with(GelForms.base(base()), placed());
    return section(
        "whole",
        "Lanes and pairs",
        overview(gel.reading(), gel.named().pair(), source("whole")),
        note(
            "quiet",
            "Drag a lane to move it, an edge to make it wider or narrower, a number onto another's"
                + " to pair the two. Keys on a lane: left and right move it, up and down change its"
                + " width, with Shift by ten pixels. The gel is read again at once; nothing is"
                + " saved until you confirm or save."),
        form,
        new LaneFields(gel, fields.lanes(), isPaired ? BANDS_FORM : "lanes-form").toNode());
  }

  /** All lanes of a reading, numbered from the left. */
  static Node overview(GelReading reading, int pair, String source) {
    String title = reading.lanes().size() + " lanes";
    GelFigure.Told told =
        new GelFigure.Told(
            source,
            title,
            String.join(
                "; ",
                reading.lanes().stream()
                    .map(l -> "lane " + (l.index() + 1) + " " + l.kind().word())
                    .toList()));
    return division(
            "scroll",
            Element.of(
                "figure",
                reading.lanes().isEmpty()
                    ? note("empty", "No lane was found in this picture.")
                    : LanesFigure.of(reading, pair, told)))
        .with("tabindex", "0")
        .with("role", "region")
        .with("aria-label", "Picture of the whole gel");
  }

  /** The names without places find the lanes anew. */
  private Node again() {
    String names = gel.kept().plan().withoutPlaces().toWords();
    Typed typed = Typed.of(names, gel.named().pair() + "").withForm("again");
    return section(
        "name-lanes",
        "Another reading",
        Element.of(
            "details",
            Element.of("summary", "Let the lanes be found from their names"),
            GelForms.name(visit, gel.path(), gel.kept().picture(), base(), typed)),
        Element.of(
            "details",
            Element.of("summary", "Send another picture"),
            GelForms.upload(visit, gel.path(), base(), Typed.of("", ""))));
  }

  private Node kept() {
    String source = source("");
    return section(
        "kept-gel",
        "Kept",
        paragraph(
            "The picture, what was read in it and every edit stay as they are: "
                + "read by "
                + gel.kept().madeBy()
                + (gel.isPlaced() ? ", the lanes placed by " + fields.placer() : "")
                + "."),
        division(
            "actions",
            link(source + "picture", "The picture as it was sent"),
            link(source + "reading", "The reading as a file")));
  }
}
