package cistern.clinic.facts;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.hidden;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.house.RuleBook;
import cistern.clinic.house.RuleChange;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.policy.PolicyFile;
import cistern.exchange.policy.PolicyReading;
import cistern.fact.Fact;
import cistern.fact.UnitKey;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * The rules of the house: every fact that a clinic may decide for itself, looked for, changed after
 * it was seen what that alters, and taken back.
 */
public final class RulesScreen {

  /** Where the rules are. */
  static final String PATH = "/rules";

  private static final String RULE = "rule";
  private static final String LABORATORY = "laboratory";
  private static final String FIND = "find";
  private static final String GROUP = "group";

  private final CaseContext context;
  private final RuleBook book;
  private final RulesInForce beneath;

  private RulesScreen(CaseContext context, RuleBook book, RulesInForce beneath) {
    this.context = context;
    this.book = book;
    this.beneath = beneath;
  }

  /**
   * The screen of a clinic's rules.
   *
   * @param beneath what the program was started with
   */
  public static RulesScreen of(CaseContext context, RuleBook book, RulesInForce beneath) {
    return new RulesScreen(context, book, beneath);
  }

  /** Its routes. */
  public List<Route> routes() {
    return List.of(
        Route.get(PATH, Permission.KEEP_RULES, this::page),
        Route.get(PATH + "/file", Permission.KEEP_RULES, this::file),
        Route.get(PATH + "/rule", Permission.KEEP_RULES, this::rule),
        Route.post(PATH + "/look", Permission.KEEP_RULES, v -> typed(v, false)),
        Route.post(PATH + "/save", Permission.KEEP_RULES, v -> typed(v, true)));
  }

  /** Rules that are looked for together, by a pattern of their keys. */
  private enum Group {
    LIMITS("Limits", ".*\\.(upper|lower|limit-rule)|albumin-quotient\\..*"),
    CUT_OFFS("Cut-offs", "bands\\.cut-off|.*-index\\.(upper|borderline)|csf-positive\\..*"),
    PRIORS("Priors", "probability\\..*|headache-risk\\.local\\..*"),
    VARIATION("Coefficients of variation", "cv\\..*"),
    TUBES("Tubes", "tubes\\..*|turnaround\\..*|label\\..*"),
    UNITS("Units", "unit\\..*|molar-mass\\..*"),
    PAPERS("Letterhead and papers", "page\\..*"),
    ZONE("Time zone", "page\\.time-zone"),
    CRITICAL("Critical values", "critical\\..*");

    private final String title;
    private final String keys;

    Group(String title, String keys) {
      this.title = title;
      this.keys = keys;
    }

    private String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private ServerResponse page(PageRequest visit) {
    String find = visit.field(FIND);
    Optional<Group> group =
        Arrays.stream(Group.values()).filter(g -> g.word().equals(visit.field(GROUP))).findFirst();
    return Responses.page(
        context
            .frame()
            .toHtml(
                visit,
                "House rules",
                Element.of("h1", "House rules"),
                standing(),
                search(find),
                groups(group),
                find.isEmpty() && group.isEmpty() ? nothing() : found(find, group),
                section("house", "What this house has changed", inForce()),
                section("history", "Every change", history())));
  }

  private Element standing() {
    String policy =
        context
            .medicine()
            .facts()
            .policy()
            .map(name -> "In force now: " + name + ". ")
            .orElse("No rule differs from the standard now. ");
    return Html.paragraph(
            policy
                + "A house rule wins over the policy file that the program was started with, and"
                + " that wins over the standard value. ")
        .with(
            context.medicine().rules().policy().isEmpty()
                ? nothing()
                : link(PATH + "/file", "All changed rules as a policy file"));
  }

  private static Element search(String find) {
    return Element.of(
            "form",
            field(
                "Find a rule by its name, what it is, or its source",
                input(FIND, find)
                    .with("autocomplete", "off")
                    .with("maxlength", Integer.toString(Setting.SEARCH_MOST.number()))),
            button("Find"))
        .with("method", "get")
        .with("action", PATH)
        .with("role", "search")
        .with("class", "finder");
  }

  private static Element groups(Optional<Group> here) {
    List<Element> links = new ArrayList<>();
    for (Group group : Group.values()) {
      Element link = link(PATH + "?" + GROUP + "=" + group.word(), group.title);
      links.add(here.filter(group::equals).isPresent() ? link.with("aria-current", "true") : link);
    }
    return Element.of("nav").with("class", "ways").with("aria-label", "Kinds of rules").with(links);
  }

  private Node found(String find, Optional<Group> group) {
    List<Fact> all =
        context.medicine().facts().all().stream()
            .filter(f -> group.isEmpty() || f.key().matches(group.get().keys))
            .filter(f -> holds(f, find))
            .toList();
    int most = Setting.CASES_A_PAGE.number();
    if (all.isEmpty()) {
      return note("empty", "No rule holds these words.").with("role", "status");
    }
    String caption =
        all.size() > most
            ? "The first " + most + " of " + all.size() + " rules: a further word finds fewer"
            : all.size() + (all.size() == 1 ? " rule" : " rules");
    return Html.table(
        caption,
        List.of("Rule", "What it is", "Value", "Unit", "Status", "Source"),
        all.stream().limit(most).map(this::row).toList());
  }

  private boolean holds(Fact fact, String find) {
    Fact below = beneath.facts().fact(fact.key());
    String words =
        String.join(
                " ",
                fact.key(),
                fact.key().replaceAll("[.-]", " "),
                RuleName.of(fact.key()),
                below.place(),
                below.source(),
                fact.source())
            .toLowerCase(Locale.ROOT);
    return Arrays.stream(find.strip().toLowerCase(Locale.ROOT).split("\\s+", -1))
        .allMatch(words::contains);
  }

  private List<Node> row(Fact fact) {
    String what = beneath.facts().fact(fact.key()).place();
    String standard = fact.standard().map(s -> " (standard " + s.toText() + ")").orElse("");
    return List.of(
        PolicyFile.isChangeable(fact)
            ? link(address(fact.key()), RuleName.of(fact.key()))
            : text(RuleName.of(fact.key())),
        text(PolicyFile.isChangeable(fact) ? what : "Part of the program: not changed here"),
        text(fact.value().toText() + standard),
        text(unit(fact.unit())),
        text(fact.status().word()),
        text(fact.source()));
  }

  /** A unit as it is read: a plain number has none. */
  static String unit(String unit) {
    return unit.equals("1") ? "" : unit;
  }

  /** Where a rule is changed. */
  static String address(String key) {
    return PATH + "/rule?rule=" + URLEncoder.encode(key, StandardCharsets.UTF_8);
  }

  /** The way from a unit of the house to that of one laboratory; nothing for any other rule. */
  static Node forOneLaboratory(String key) {
    return UnitKey.parse(key)
        .filter(unit -> unit.laboratory().isEmpty())
        .<Node>map(
            unit ->
                Element.of(
                        "form",
                        hidden(RULE, key),
                        field(
                            "Only for the results of one laboratory, as work-ups name it",
                            input(LABORATORY, "")
                                .with("required", "required")
                                .with("maxlength", Integer.toString(Setting.RULE_MOST.number()))),
                        button("Open the rule for it").with("class", "second-button"))
                    .with("method", "get")
                    .with("action", PATH + "/rule")
                    .with("class", "finder"))
        .orElseGet(Html::nothing);
  }

  private Node inForce() {
    return Html.list(
        book.inForce().stream().map(this::line).toList(), "Nothing: every rule is as it came.");
  }

  private Node line(RuleChange change) {
    boolean isKnown =
        RulesInForce.read(change, beneath.facts()) instanceof PolicyReading.Understood;
    return Element.of("span", link(address(change.rule()), RuleName.of(change.rule())))
        .withText(
            ": %s, by %s, %s"
                .formatted(
                    (change.typed() + " " + unit(change.unit())).strip(),
                    context.accounts().fullName(change.account()),
                    context.time(change.at())))
        .withText(isKnown ? "" : ". Not in force: this program does not know the rule any more");
  }

  private Node history() {
    List<RuleChange> all = book.all();
    return all.isEmpty() ? note("empty", "None yet.") : RulePage.history(context, all);
  }

  private ServerResponse file(PageRequest visit) {
    String policy = context.medicine().rules().policy();
    return policy.isEmpty()
        ? context.troubles().missing(visit)
        : Responses.file(
            "application/json", "house-rules.json", policy.getBytes(StandardCharsets.UTF_8));
  }

  private Optional<Fact> fact(PageRequest visit) {
    String typed = visit.field(RULE);
    String laboratory = visit.field(LABORATORY);
    String key =
        UnitKey.parse(typed)
            .map(unit -> ofLaboratory(unit, unit.laboratory().orElse(laboratory), typed))
            .orElse(typed);
    return key.length() > Setting.RULE_MOST.number()
        ? Optional.empty()
        : context.medicine().facts().find(key).filter(PolicyFile::isChangeable);
  }

  /** The key for a laboratory: the one that holds already, however its name was typed then. */
  private String ofLaboratory(UnitKey unit, String laboratory, String typed) {
    return laboratory.isBlank()
        ? typed
        : context.medicine().facts().keys(UnitKey.START).stream()
            .filter(
                known ->
                    UnitKey.parse(known)
                        .filter(k -> k.sample().equals(unit.sample()) && k.isOf(laboratory))
                        .isPresent())
            .findFirst()
            .orElseGet(() -> unit.of(laboratory));
  }

  private ServerResponse rule(PageRequest visit) {
    return fact(visit)
        .map(f -> Responses.page(page(new RuleForm(visit, book, beneath, f)).opened(visit)))
        .orElseGet(() -> context.troubles().missing(visit));
  }

  /** What is typed is looked at; it is kept when just this was seen and everything can be read. */
  private ServerResponse typed(PageRequest visit, boolean isToKeep) {
    Optional<Fact> fact = fact(visit);
    if (fact.isEmpty()) {
      return context.troubles().missing(visit);
    }
    RuleForm form = new RuleForm(visit, book, beneath, fact.get());
    RulePage page = page(form);
    RuleChange typed = form.typed();
    if (!form.notes(typed).isEmpty()) {
      return Responses.page(HttpStatus.UNPROCESSABLE_CONTENT, page.refused(visit, typed));
    }
    if (!isToKeep) {
      return Responses.page(page.looked(visit, typed, ""));
    }
    boolean isSeen = visit.field(RuleForm.SEEN).equals(RuleForm.seen(typed));
    if (isSeen && book.add(typed).isPresent()) {
      renew();
      return Responses.see(address(typed.rule()) + "&kept=" + typed.number());
    }
    return Responses.page(
        HttpStatus.CONFLICT,
        page.looked(
            visit,
            form.typed(),
            "Nothing is saved yet: what is typed, or another rule, was changed since you looked."
                + " Below stands what it would alter now."));
  }

  private RulePage page(RuleForm form) {
    return new RulePage(context, book, beneath, form);
  }

  /** Brings the rules in force to what is kept, for every case; lists follow at once. */
  private synchronized void renew() {
    context.medicine().renew(beneath.with(book.inForce()));
    context.summaries().bring(Duration.ofMillis(Setting.DAY_WAIT.number()));
  }
}
