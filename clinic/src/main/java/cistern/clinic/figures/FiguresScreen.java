package cistern.clinic.figures;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.paragraph;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.select;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.casework.InterpretationScreen;
import cistern.clinic.setting.Setting;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.paper.PaperPage;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/** How well the clinic does: its own punctures put together, for whom its doctors ask. */
public final class FiguresScreen {

  private static final String FROM = "from";
  private static final String TO = "to";

  /** Before the name of a final diagnosis, in the name of its field. */
  private static final String GROUP = "group:";

  private static final String WITHOUT = "without";
  private static final String WITH = "with";
  private static final List<Html.Choice> GROUPS =
      List.of(
          new Html.Choice("", "in no group"),
          new Html.Choice(WITHOUT, "without the disease"),
          new Html.Choice(WITH, "with the disease"));

  private final CaseContext context;
  private final Figures figures;

  private FiguresScreen(CaseContext context) {
    this.context = context;
    this.figures = new Figures(context.cases(), context.medicine());
  }

  /** The figures of a clinic. */
  public static FiguresScreen of(CaseContext context) {
    return new FiguresScreen(context);
  }

  /** Their routes. */
  public List<Route> routes() {
    return List.of(
        Route.get("/figures", Permission.SEE_FIGURES, v -> page(v, HttpStatus.OK, nothing())),
        Route.post("/figures", Permission.SEE_FIGURES, this::begin),
        Route.post("/figures/tables", Permission.SEE_FIGURES, this::tables));
  }

  private ServerResponse page(PageRequest visit, HttpStatus status, Node said) {
    Node content =
        switch (figures.standing()) {
          case Standing.NotMade _ ->
              Fragment.of(
                  title(),
                  said,
                  paragraph(
                      "What the punctures that are kept here say together: how far apart fluid and"
                          + " serum are drawn, bloody taps, headaches by needle, critical values"
                          + " told in time, how readers of gels agree, and whether our limits are"
                          + " right for our laboratory."),
                  form(visit, Choice.ALL, new TreeMap<>()));
          case Standing.Making making ->
              Fragment.of(
                  title(),
                  said,
                  note("wait", "Reading the cases: " + making.read() + " so far.")
                      .with("role", "status")
                      .with("data-renew", Integer.toString(Setting.DAY_RENEWAL.number())),
                  Html.link("/figures", "Look again"));
          case Standing.Failed failed ->
              Fragment.of(
                  title(),
                  said,
                  note(
                      "trouble",
                      "The figures could not be made. Nothing was changed; try again, and tell"
                          + " whoever runs this program if it happens twice."),
                  form(visit, failed.choice(), new TreeMap<>()));
          case Standing.Made made -> Fragment.of(said, made(visit, made));
        };
    return Responses.page(status, context.frame().toHtml(visit, "Figures", renewed(content)));
  }

  /** What a page that waits replaces by what it has become. */
  private static Node renewed(Node content) {
    return Element.of("div", content).with("id", "renewed");
  }

  private static Node title() {
    return Element.of("h1", "Figures of this clinic");
  }

  private Node made(PageRequest visit, Standing.Made made) {
    boolean isEmpty = made.seen().counted() == 0;
    return Fragment.of(
        isEmpty
            ? Fragment.of(title(), note("empty", "No puncture of this time is kept here."))
            : InterpretationScreen.inside(PaperPage.toBody(made.paper())),
        paragraph("Made " + context.time(made.at().toString()) + ": " + words(made.seen()) + "."),
        isEmpty
            ? nothing()
            : visit
                .form("/figures/tables")
                .with(button("Report and tables (ZIP)").with("class", "plain")),
        form(visit, made.choice(), made.diagnoses()));
  }

  private static String words(Standing.Seen seen) {
    return "punctures counted "
        + seen.counted()
        + ", cases without a fluid or of another time "
        + seen.left()
        + ", cases that cannot be read "
        + seen.unreadable();
  }

  private static Node form(PageRequest visit, Choice choice, SortedMap<String, Long> diagnoses) {
    return section(
        "make",
        "Make the figures",
        visit
            .form("/figures")
            .with(
                division(
                    "months",
                    field("Drawn from the month", month(FROM, choice.from())),
                    field("to the month", month(TO, choice.to()))),
                groups(choice, diagnoses),
                division("actions", button("Make the figures"))));
  }

  private static Element month(String name, Optional<YearMonth> month) {
    return input(name, month.map(YearMonth::toString).orElse(""))
        .with("type", "month")
        .with("autocomplete", "off");
  }

  /** Who counts as what: said by the person who asks, of the diagnoses that there are. */
  private static Node groups(Choice choice, SortedMap<String, Long> diagnoses) {
    if (diagnoses.isEmpty()) {
      return note(
          "hint",
          "Limits and performance need final diagnoses, which are noted in after-care. Those that"
              + " are found stand here afterwards, to be put in groups.");
    }
    return Html.table(
        "Final diagnoses: who counts as what",
        List.of("Final diagnosis", "Punctures", "Group"),
        diagnoses.entrySet().stream().map(d -> group(choice, d)).toList());
  }

  private static List<Node> group(Choice choice, Map.Entry<String, Long> diagnosis) {
    String name = diagnosis.getKey();
    String now =
        choice.controls().contains(name) ? WITHOUT : choice.cases().contains(name) ? WITH : "";
    return List.of(
        text(name),
        text(Long.toString(diagnosis.getValue())),
        select(GROUP + name, now, GROUPS).with("aria-label", "Group of " + name));
  }

  private ServerResponse begin(PageRequest visit) {
    try {
      Choice choice =
          new Choice(
              month(visit, FROM), month(visit, TO), named(visit, WITHOUT), named(visit, WITH));
      figures.begin(choice, visit.account().id());
      return Responses.see("/figures");
    } catch (DateTimeParseException e) {
      return page(
          visit,
          HttpStatus.BAD_REQUEST,
          note("trouble", "A month is written as year and month: " + YearMonth.from(today()) + ".")
              .with("role", "alert"));
    }
  }

  private LocalDate today() {
    return context.medicine().now().toLocalDate();
  }

  private static Optional<YearMonth> month(PageRequest visit, String name) {
    String typed = visit.field(name);
    return typed.isEmpty() ? Optional.empty() : Optional.of(YearMonth.parse(typed));
  }

  private static Set<String> named(PageRequest visit, String group) {
    return visit.fields().entrySet().stream()
        .filter(f -> f.getKey().startsWith(GROUP) && f.getValue().contains(group))
        .map(f -> f.getKey().substring(GROUP.length()))
        .collect(Collectors.toSet());
  }

  /** The tables hold a row a person: the trail says who took them. */
  private ServerResponse tables(PageRequest visit) {
    if (!(figures.standing() instanceof Standing.Made made)) {
      return Responses.see("/figures");
    }
    context.cases().counted(visit.account().id());
    return Responses.file(
        "application/zip",
        "figures-" + LocalDate.ofInstant(made.at(), context.medicine().zone()) + ".zip",
        made.archive());
  }
}
