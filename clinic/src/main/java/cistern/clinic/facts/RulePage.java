package cistern.clinic.facts;

import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.paragraph;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.casework.CaseContext;
import cistern.clinic.house.RuleBook;
import cistern.clinic.house.RuleChange;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.status.VerdictChange;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.fact.Fact;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.paper.CitedText;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** One rule: what holds, what is typed for it, and what that would alter. */
final class RulePage {

  private final CaseContext context;
  private final RuleBook book;
  private final RulesInForce beneath;
  private final Fact fact;
  private final RuleForm form;

  RulePage(CaseContext context, RuleBook book, RulesInForce beneath, RuleForm form) {
    this.context = context;
    this.book = book;
    this.beneath = beneath;
    this.fact = form.fact();
    this.form = form;
  }

  /** The page as it is opened, perhaps with an earlier value to be taken again. */
  String opened(PageRequest visit) {
    Optional<RuleChange> from =
        book.all().stream()
            .filter(c -> visit.field("from").equals(Long.toString(c.number())))
            .filter(c -> c.rule().equals(fact.key()))
            .findFirst();
    RuleChange typed =
        new RuleChange(
            0,
            "",
            "",
            fact.key(),
            from.map(RuleChange::typed).orElse(""),
            from.map(RuleChange::unit).orElse(fact.unit()),
            from.map(RuleChange::source).orElse(""),
            "");
    Node said =
        visit.field("kept").isEmpty()
            ? nothing()
            : note(
                    "done",
                    "Kept. It holds for every case from now on; what is signed stays as it is.")
                .with("role", "status");
    return html(visit, said, form.toElement(typed, Map.of()), nothing());
  }

  /** The page with what is typed and what is wrong with it. */
  String refused(PageRequest visit, RuleChange typed) {
    return html(
        visit,
        note("trouble", "Not saved yet: see beside the marked fields.").with("role", "alert"),
        form.toElement(typed, form.notes(typed)),
        nothing());
  }

  /** The page with what is typed and what it would alter. */
  String looked(PageRequest visit, RuleChange typed, String words) {
    context.cases().listed(visit.account().id());
    Node said = words.isEmpty() ? nothing() : note("trouble", words).with("role", "alert");
    return html(visit, said, form.toElement(typed, Map.of()), effects(typed, form.after()));
  }

  /** The rules as they would be, under the name of those in force so that only they differ. */
  private RulesInForce trial(RuleChange typed) {
    List<RuleChange> others =
        book.inForce().stream().filter(c -> !c.rule().equals(fact.key())).toList();
    return beneath.with(
        typed.isTakenBack() ? others : Stream.concat(others.stream(), Stream.of(typed)).toList());
  }

  private String html(PageRequest visit, Node said, Node asked, Node effects) {
    List<RuleChange> own = book.all().stream().filter(c -> c.rule().equals(fact.key())).toList();
    return context
        .frame()
        .toHtml(
            visit,
            RuleName.of(fact.key()),
            paragraph("").with(link(RulesScreen.PATH, "All house rules")),
            Element.of("h1", RuleName.of(fact.key())),
            note("question", beneath.facts().fact(fact.key()).place()),
            said,
            levels(),
            paragraph("In policy files: ")
                .with(Element.of("code", fact.key()))
                .with("class", "quiet"),
            asked,
            effects,
            RulesScreen.forOneLaboratory(fact.key()),
            section(
                "history",
                "History of this rule",
                own.isEmpty()
                    ? note("empty", "Nobody here has changed it yet.")
                    : history(context, own)));
  }

  /** Standard, policy file, house: the last that says something wins. */
  private Node levels() {
    Node back =
        paragraph("")
            .with(
                link(
                    RulesScreen.address(fact.key()) + "&" + RuleForm.BACK + "=yes",
                    "Take the house rule back"));
    return Fragment.of(
        Html.table(
            "The last that says something wins",
            List.of("Who says so", "Value", "Source", "In force"),
            rows()),
        form.inForce().isEmpty() ? nothing() : back);
  }

  private List<List<Node>> rows() {
    Fact below = beneath.facts().fact(fact.key());
    Optional<RuleChange> house = form.inForce();
    String file = below.isChanged() ? below.value().toText() : "";
    String standard = below.standard().orElse(below.value()).toText();
    List<List<Node>> rows = new ArrayList<>();
    rows.add(
        level(
            house.isEmpty() && file.isEmpty(),
            "Standard",
            amount(standard, fact.unit()),
            below.isChanged()
                ? text("")
                : Fragment.of(
                    CitedText.of(below.citation(), below.cited().references()),
                    text(" (" + below.status().word() + ")"))));
    rows.add(
        level(
            house.isEmpty() && !file.isEmpty(),
            "Policy file at the start",
            file.isEmpty() ? "says nothing" : amount(file, fact.unit()),
            text(file.isEmpty() ? "" : below.source() + " (local)")));
    rows.add(
        level(
            house.isPresent(),
            "House rule",
            house.map(c -> amount(c.typed(), c.unit())).orElse("says nothing"),
            text(house.map(this::who).orElse(""))));
    return rows;
  }

  private static String amount(String value, String unit) {
    return (value + " " + RulesScreen.unit(unit)).strip();
  }

  private static List<Node> level(boolean isInForce, String who, String value, Node source) {
    return List.of(
        text(who),
        isInForce ? Element.of("strong", value) : text(value),
        source,
        text(isInForce ? "in force" : ""));
  }

  private String who(RuleChange change) {
    return "%s (local); %s, %s: %s"
        .formatted(
            change.source(),
            context.accounts().fullName(change.account()),
            context.time(change.at()),
            change.reason());
  }

  private Node effects(RuleChange typed, long after) {
    List<RuleEffect> all = RuleEffect.of(context, trial(typed), after);
    List<RuleEffect> verdicts = all.stream().filter(RuleEffect::isVerdict).toList();
    List<RuleEffect> others = all.stream().filter(e -> !e.isVerdict()).toList();
    long cases = context.cases().count();
    long to = Math.min(cases, after + Setting.RULE_CASES.number());
    String looked =
        after == 0 && to == cases
            ? "Looked at all cases: " + cases + ". "
            : "Looked at cases %d to %d of %d, the last changed first; not looked at here: %d. "
                .formatted(Math.min(after + 1, to), to, cases, cases - to + after);
    return section(
        "alters",
        "What it would alter",
        note("said", counted(verdicts.size(), others.size())).with("role", "status"),
        paragraph(
            looked
                + "Nothing is saved yet. Signed papers are never rewritten: they stay as signed"
                + " under the old rule, and only the case itself says otherwise."),
        to < cases ? form.next(typed, to, cases - to) : nothing(),
        verdicts.isEmpty() ? nothing() : table("Cases with another verdict", verdicts),
        others.isEmpty()
            ? nothing()
            : Element.of(
                "details",
                Element.of("summary", "Cases in which only numbers or words change"),
                table("No verdict changes in these", others)));
  }

  private static String counted(int verdicts, int others) {
    String first =
        switch (verdicts) {
          case 0 -> "No verdict changes";
          case 1 -> "A verdict changes in 1 case";
          default -> "A verdict changes in " + verdicts + " cases";
        };
    String rest = others == 0 ? "nothing else" : "only numbers or words in " + others;
    return first + "; " + rest + ".";
  }

  private static Node table(String caption, List<RuleEffect> effects) {
    return Html.table(
        caption,
        List.of("Case", "Whose", "Standing", "Now → then"),
        effects.stream().map(RulePage::row).toList());
  }

  private static List<Node> row(RuleEffect effect) {
    List<Node> lines =
        effect.changes().stream()
            .filter(
                c -> c.isVerdict() || !effect.isVerdict() || c.what().equals(VerdictChange.ANSWER))
            .map(RulePage::words)
            .toList();
    return List.of(
        link("/cases/" + effect.caseId(), effect.name()),
        text(effect.person()),
        text(effect.standing()),
        Html.list(lines, ""));
  }

  private static Node words(VerdictChange change) {
    return text(change.what() + ": " + change.now() + " → " + change.then());
  }

  /** Changes, the newest first, each of which can be taken again. */
  static Node history(CaseContext context, List<RuleChange> changes) {
    int most = Setting.ENTRIES_A_PAGE.number();
    return Html.table(
        "The newest first",
        List.of("Change", "When", "Who", "Rule", "Value", "Why", "Source", "Again"),
        changes.reversed().stream().limit(most).map(c -> past(context, c)).toList());
  }

  private static List<Node> past(CaseContext context, RuleChange change) {
    String address = RulesScreen.address(change.rule());
    return List.of(
        text(Long.toString(change.number())),
        text(context.time(change.at())),
        text(context.accounts().fullName(change.account())),
        link(address, RuleName.of(change.rule())),
        text(change.isTakenBack() ? "taken back" : amount(change.typed(), change.unit())),
        text(change.reason()),
        text(change.source()),
        change.isTakenBack()
            ? nothing()
            : link(address + "&from=" + change.number(), "Take this again")
                .with("aria-label", "Take the value of change " + change.number() + " again"));
  }
}
