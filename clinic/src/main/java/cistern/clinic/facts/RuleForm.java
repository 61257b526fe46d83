package cistern.clinic.facts;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.hidden;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.audit.Digest;
import cistern.clinic.house.RuleBook;
import cistern.clinic.house.RuleChange;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.Place;
import cistern.exchange.policy.PolicyFile;
import cistern.exchange.policy.PolicyReading;
import cistern.fact.Fact;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is typed for one rule.
 *
 * @param visit who types
 * @param book every change so far
 * @param beneath what the program was started with
 * @param fact the rule as it is in force
 */
record RuleForm(PageRequest visit, RuleBook book, RulesInForce beneath, Fact fact) {

  /** The field that tells what was looked at. */
  static final String SEEN = "seen";

  /** The field that takes the house rule back. */
  static final String BACK = "back";

  /** The field that tells how many cases were looked at before. */
  private static final String AFTER = "after";

  private static final String VALUE = "value";
  private static final String UNIT = "unit";
  private static final String SOURCE = "source";
  private static final String REASON = "reason";

  /** The unit of a plain number, which has none to be typed. */
  private static final String PLAIN = "1";

  private static final String LETTERHEAD = "page.letterhead";

  /** More words than this are completed while they are typed, and not listed. */
  private static final int LISTED = 10;

  /** What the house says of the rule now. */
  Optional<RuleChange> inForce() {
    return book.inForce().stream().filter(c -> c.rule().equals(fact.key())).findFirst();
  }

  private boolean isBack() {
    return visit.fields().containsKey(BACK) && inForce().isPresent();
  }

  /** What is typed, as the change that would follow the last. */
  RuleChange typed() {
    return new RuleChange(
        book.last() + 1,
        "",
        visit.account().id(),
        fact.key(),
        isBack() ? "" : visit.field(VALUE),
        isBack() || PolicyFile.isWord(fact) ? "" : visit.field(UNIT),
        visit.field(SOURCE),
        visit.field(REASON));
  }

  /** What tells that just this was looked at, on the rules that were in force then. */
  static String seen(RuleChange typed) {
    return Digest.of(
        Long.toString(typed.number()),
        typed.rule(),
        typed.typed(),
        typed.unit(),
        typed.source(),
        typed.reason());
  }

  /** What is wrong with what is typed, by field. */
  Map<String, String> notes(RuleChange typed) {
    Map<String, String> notes = new LinkedHashMap<>();
    if (!typed.isTakenBack()
        && RulesInForce.read(typed, beneath.facts()) instanceof PolicyReading.NotValid not) {
      for (InputProblem problem : not.problems()) {
        notes.merge(field(problem), problem.text(), (a, b) -> a + " " + b);
      }
    }
    if (typed.reason().isEmpty()) {
      notes.put(REASON, "Say why it is changed: whoever looks later asks that first.");
    }
    if (typed.isTakenBack() && !isBack()) {
      notes.put(VALUE, "This is missing.");
    }
    int most = Setting.REASON_MOST.number();
    Map.of(VALUE, typed.typed(), SOURCE, typed.source(), REASON, typed.reason())
        .forEach(
            (name, words) -> {
              if (words.length() > most) {
                notes.put(name, "At most " + most + " characters.");
              }
            });
    return notes;
  }

  /** The field that a problem of the rule is about. */
  private String field(InputProblem problem) {
    Place rule = Place.WHOLE.member("facts").member(fact.key());
    return Stream.of(UNIT, SOURCE)
        .filter(field -> rule.member(field).path().equals(problem.place()))
        .findFirst()
        .orElse(VALUE);
  }

  /** The form with what is typed, and what is wrong beside each field. */
  Element toElement(RuleChange typed, Map<String, String> notes) {
    boolean isLooked = typed.number() > 0 && notes.isEmpty();
    Element look =
        Html.button(isLooked ? "Look again" : "See what it alters")
            .with("formaction", RulesScreen.PATH + "/look");
    return visit
        .form(RulesScreen.PATH + "/save")
        .with("class", "rule")
        .with("data-busy", "Looking through the cases …")
        .with(fields(typed, notes))
        .with(
            isLooked
                ? division(
                    "actions",
                    look.with("class", "second-button"),
                    hidden(SEEN, seen(typed)),
                    Html.button("Save as " + visit.account().fullName()))
                : division("actions", look));
  }

  /** How many cases were looked at before. */
  long after() {
    String after = visit.field(AFTER);
    return after.matches("\\d{1,9}") ? Long.parseLong(after) : 0;
  }

  /** The way to the cases that were not looked at yet. */
  Element next(RuleChange typed, long after, long left) {
    return visit
        .form(RulesScreen.PATH + "/look")
        .with("data-busy", "Looking through the cases …")
        .with(
            hidden("rule", fact.key()),
            isBack() ? hidden(BACK, "yes") : nothing(),
            hidden(VALUE, typed.typed()),
            hidden(UNIT, typed.unit()),
            hidden(SOURCE, typed.source()),
            hidden(REASON, typed.reason()),
            hidden(AFTER, Long.toString(after)),
            Html.button(
                    "Look at the next " + Math.min(left, Setting.RULE_CASES.number()) + " cases")
                .with("class", "second-button"));
  }

  private List<Node> fields(RuleChange typed, Map<String, String> notes) {
    List<Node> fields = new ArrayList<>();
    fields.add(hidden("rule", fact.key()));
    if (isBack()) {
      fields.add(hidden(BACK, "yes"));
      fields.add(
          note(
              "back",
              "The house rule is taken back: %s %s holds again."
                  .formatted(
                      beneath.facts().fact(fact.key()).value().toText(),
                      RulesScreen.unit(fact.unit()))));
    } else {
      fields.add(asked("New value", value(typed.typed()), notes, VALUE));
      fields.add(choices());
      if (!PolicyFile.isWord(fact)) {
        boolean isPlain = fact.unit().equals(PLAIN) && typed.unit().equals(PLAIN);
        fields.add(
            isPlain ? hidden(UNIT, PLAIN) : asked("Unit", line(UNIT, typed.unit()), notes, UNIT));
      }
    }
    fields.add(
        asked(
            "Source: who decided it, and where that stands",
            line(SOURCE, typed.source()),
            notes,
            SOURCE));
    fields.add(asked("Why it is changed", line(REASON, typed.reason()), notes, REASON));
    return fields;
  }

  private static Element line(String name, String value) {
    return Html.input(name, value)
        .with("autocomplete", "off")
        .with("maxlength", Integer.toString(Setting.REASON_MOST.number()));
  }

  private Element value(String typed) {
    List<String> words = PolicyFile.choices(fact);
    if (fact.key().equals(LETTERHEAD)) {
      return Html.area(VALUE, typed).with("rows", "4");
    }
    if (words.isEmpty()) {
      return line(VALUE, typed);
    }
    return words.size() > LISTED
        ? line(VALUE, typed).with("list", "words")
        : Html.select(
            VALUE,
            typed.isEmpty() ? fact.value().toText() : typed,
            words.stream().map(w -> new Html.Choice(w, w)).toList());
  }

  private Node choices() {
    List<String> words = PolicyFile.choices(fact);
    return words.size() > LISTED
        ? Element.of("datalist")
            .with("id", "words")
            .with(words.stream().map(w -> Element.of("option").with(VALUE, w)).toList())
        : nothing();
  }

  private static Element asked(
      String label, Element control, Map<String, String> notes, String name) {
    String note = notes.getOrDefault(name, "");
    return note.isEmpty()
        ? Html.field(label, control)
        : Html.field(
                label, control.with("aria-invalid", "true").with("aria-describedby", "n-" + name))
            .with(note("doubt", note).with("id", "n-" + name));
  }
}
