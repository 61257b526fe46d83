package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.form.Typable;
import cistern.clinic.form.Typing;
import cistern.exchange.json.Json;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What stands under one heading of a form: what is answered as a line that says it and unfolds,
 * what is open as fields. A field that is typed and not saved, or that something is asked about, is
 * open.
 *
 * @param heading of the block
 * @param fields in order
 * @param typing what stands in the fields
 * @param file the case as it stands
 * @param asked the keys of the fields beside which something is said
 */
record StepBlock(
    String heading,
    List<? extends Typable> fields,
    Typing typing,
    Json.Structure file,
    Set<String> asked) {

  /** From how many open questions on a block has one press for all of them. */
  private static final int SEVERAL = 3;

  /** As many labels as a line names; more are counted. */
  private static final int NAMED = 4;

  private static final String BETWEEN = " · ";

  Element toElement(Function<Typable, Node> control) {
    List<Typable> folded = new ArrayList<>();
    List<Typable> open = new ArrayList<>();
    boolean isSettled = isSettled();
    boolean isOneMore = isOneMore();
    for (Typable field : fields) {
      boolean isIn = isOneMore || (isSettled ? !isOpen(field) : isAnswered(field));
      (isIn ? folded : open).add(field);
    }
    return Element.of("fieldset", Element.of("legend", heading))
        .with(folded.isEmpty() ? nothing() : folded(folded, isOneMore, control))
        .with(isSeveral(open) ? none() : nothing())
        .with(open.isEmpty() ? nothing() : shown(open, control));
  }

  /** Fields to type in, then what is answered by one press. */
  private static Node shown(List<Typable> some, Function<Typable, Node> control) {
    return Fragment.of(
        shown("fields", some.stream().filter(f -> !f.isQuestion()).toList(), control),
        shown("fields questions", some.stream().filter(Typable::isQuestion).toList(), control));
  }

  private static Node shown(String kind, List<Typable> some, Function<Typable, Node> control) {
    return some.isEmpty() ? nothing() : division(kind).with(some.stream().map(control).toList());
  }

  /**
   * Whether nothing of it is open any more: every question of it is answered, or what it is about
   * is named in a section, where the rest is for who knows more.
   */
  private boolean isSettled() {
    List<? extends Typable> questions =
        fields.stream().filter(f -> f.isQuestion() && typing.isAsked(f, file)).toList();
    boolean isInSection = fields.stream().anyMatch(f -> f.section().isPresent());
    return questions.isEmpty()
        ? isInSection && fields.stream().anyMatch(this::isAnswered)
        : questions.stream().allMatch(this::isAnswered);
  }

  /** Whether it is one more of a kind, of which nothing is said. */
  private boolean isOneMore() {
    return fields.stream()
        .allMatch(f -> Typing.isOneMore(f) && typing.held(f, file).isEmpty() && !isOpen(f));
  }

  private boolean isOpen(Typable field) {
    return asked.contains(field.key())
        || !typing.shown(field, file).equals(typing.held(field, file));
  }

  private boolean isAnswered(Typable field) {
    String held = typing.held(field, file);
    boolean isSaid = field.isQuestion() ? isYes(held) || isNo(held) : !held.isEmpty();
    return isSaid && !isOpen(field);
  }

  private static boolean isYes(String held) {
    return held.equals("yes");
  }

  private static boolean isNo(String held) {
    return held.equals("no");
  }

  private boolean isSeveral(List<Typable> open) {
    return open.stream().filter(f -> f.isQuestion() && !Typing.isAlone(f)).count() >= SEVERAL;
  }

  /** One press for a block of questions that were all asked and are all answered with no. */
  private Element none() {
    return division(
        "none",
        Element.of("button", "None of these")
            .with("type", "submit")
            .with("name", StepForm.NONE)
            .with("value", heading)
            .with("class", "second-button")
            .with("aria-label", "None of these: asked, and not so. " + heading));
  }

  private Element folded(List<Typable> some, boolean isOneMore, Function<Typable, Node> control) {
    return Element.of(
            "details",
            Element.of(
                "summary",
                Element.of("span", isOneMore ? "None so far" : line(some)),
                Element.of("span", isOneMore ? "add" : "change").with("class", "change")))
        .with("class", "answered")
        .with(shown(some, control));
  }

  /** What the folded fields hold, and which of them hold nothing. */
  private String line(List<Typable> some) {
    List<String> parts = new ArrayList<>();
    List<String> unsaid = new ArrayList<>();
    for (Typable field : some) {
      String held = typing.held(field, file);
      if (held.isEmpty() && !field.isQuestion() && typing.isAsked(field, file)) {
        unsaid.add(field.label());
      } else if (field.key().endsWith(".unit") && !parts.isEmpty()) {
        parts.add(parts.removeLast() + " " + field.toWords(held));
      } else if (!held.isEmpty() && !field.isQuestion()) {
        parts.add(field.toWords(held));
      }
    }
    answers(parts, some);
    if (!unsaid.isEmpty()) {
      parts.add("Not said: " + String.join(", ", unsaid));
    }
    return String.join(BETWEEN, parts);
  }

  /** Yes with its labels; no with them too where they are few. */
  private void answers(List<String> parts, List<Typable> some) {
    List<Typable> questions = some.stream().filter(Typable::isQuestion).toList();
    List<Typable> yes = questions.stream().filter(f -> isYes(typing.held(f, file))).toList();
    List<Typable> no = questions.stream().filter(f -> isNo(typing.held(f, file))).toList();
    if (!yes.isEmpty()) {
      parts.add("Yes: " + labels(yes));
    }
    if (!no.isEmpty()) {
      String none = yes.isEmpty() ? "None of %d asked" : "No to the other %d asked";
      parts.add(no.size() > NAMED ? none.formatted(no.size()) : "No: " + labels(no));
    }
  }

  private static String labels(List<Typable> some) {
    return some.stream().map(f -> Typing.inside(f.label())).collect(Collectors.joining(", "));
  }
}
