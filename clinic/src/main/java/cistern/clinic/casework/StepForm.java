package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.account.Permission;
import cistern.clinic.form.CaseStep;
import cistern.clinic.form.Typable;
import cistern.clinic.form.Typing;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.measurement.Sample;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * One form with what stands in it.
 *
 * @param visit who types
 * @param open the case as it stands
 * @param step the form
 * @param base the version that the form was opened on
 * @param typing what stands in the fields
 */
record StepForm(PageRequest visit, OpenCase open, CaseStep step, long base, Typing typing) {

  /** The field that names a block of which nothing is so. */
  static final String NONE = "none";

  /** How many empty ones of a kind are offered to be filled in. */
  private static final int SPARE = 1;

  private static final List<String> COUNTS =
      List.of("bands.csfOnly", "bands.shared", "bands.serumOnly");

  /** The same form on a case as it stands later, with other typing. */
  StepForm on(OpenCase newer, Typing other) {
    return new StepForm(visit, newer, step, newer.version().number(), other);
  }

  StepForm withBase(long newer) {
    return new StepForm(visit, open, step, newer, typing);
  }

  private String path() {
    return "/cases/" + open.version().caseId() + "/" + step.word();
  }

  /** The form, with a note beside some fields. */
  Element toElement(CaseContext context, Map<String, String> notesByKey) {
    StepLook look = StepLook.of(this, context.medicine());
    Map<String, String> notes = new TreeMap<>(look.questions());
    notes.putAll(notesByKey);
    return visit
        .form(path())
        .with("data-keep", path())
        .with("data-look", "look")
        .with("data-look-at", path() + "/look")
        .with("data-zone", zone(context))
        .with("class", step == CaseStep.RESULTS ? "step results" : "step")
        .with(Html.hidden("base", Long.toString(base)))
        .with(byEnter())
        .with(step == CaseStep.RESULTS ? results(context, look, notes) : groups(context, notes))
        .with(Html.button("Save"));
  }

  /** The first button of a form is the one that Enter presses in a field: it saves. */
  private static Element byEnter() {
    return Html.button("Save")
        .with("class", "unseen")
        .with("tabindex", "-1")
        .with("aria-hidden", "true");
  }

  /** The clinic's time as browsers name it, for what is noted as of now. */
  private static String zone(CaseContext context) {
    String id = context.medicine().zone().getId();
    return id.equals("Z") ? "UTC" : id;
  }

  private Node groups(CaseContext context, Map<String, String> notes) {
    Node fields = sections(hints(context), notes, typing.fields());
    Node groups = notNeeded().<Node>map(why -> wholly(why, fields, notes)).orElse(fields);
    return step == CaseStep.PLAN ? Fragment.of(groups, DrugHint.list(context.medicine())) : groups;
  }

  /** Why nothing of the step is needed as things stand, if it is not. */
  private Optional<String> notNeeded() {
    boolean isDrawn = open.workup().panel().csf().at().isPresent();
    return switch (step) {
      case PLAN ->
          isDrawn
              ? Optional.of("The puncture is done: what was planned, to look up or to change")
              : Optional.empty();
      case AFTER ->
          isDrawn
              ? Optional.empty()
              : Optional.of("Not needed yet: nothing is drawn. Open it all the same");
      case QUESTION, DRAW, RESULTS, BANDS -> Optional.empty();
    };
  }

  /** A step in one fold, which is open where something in it is typed or asked about. */
  private Element wholly(String why, Node fields, Map<String, String> notes) {
    Element fold = Element.of("details", Element.of("summary", why), fields).with("class", "whole");
    boolean isTouched = !notes.isEmpty() || !typing.isUnchanged(open.file());
    return isTouched ? fold.with("open", "open") : fold;
  }

  /** Some fields under their headings; those of a named section are folded together. */
  private Node sections(
      Map<String, String> hints, Map<String, String> notes, List<? extends Typable> fields) {
    SequencedMap<Block, SequencedMap<String, List<Typable>>> blocks = new LinkedHashMap<>();
    for (Typable field : fields) {
      blocks
          .computeIfAbsent(Block.of(field), s -> new LinkedHashMap<>())
          .computeIfAbsent(field.group(), g -> new ArrayList<>())
          .add(field);
    }
    List<Node> nodes = new ArrayList<>();
    blocks.forEach(
        (block, groups) ->
            nodes.add(
                block
                    .section()
                    .<Node>map(section -> folded(section, groups, hints, notes))
                    .orElseGet(() -> fieldsets(groups, hints, notes))));
    return new Fragment(nodes);
  }

  /** What stands together: all of a folded section, or what is under one heading without any. */
  private record Block(Optional<String> section, String heading) {
    static Block of(Typable field) {
      return new Block(field.section(), field.section().isPresent() ? "" : field.group());
    }
  }

  private Node fieldsets(
      SequencedMap<String, List<Typable>> groups,
      Map<String, String> hints,
      Map<String, String> notes) {
    List<Node> sets = new ArrayList<>();
    groups.forEach((group, fields) -> sets.add(fieldset(group, fields, hints, notes)));
    return new Fragment(sets);
  }

  /** What is filled in, and a few to fill in; the section is open where something is. */
  private Element folded(
      String section,
      SequencedMap<String, List<Typable>> groups,
      Map<String, String> hints,
      Map<String, String> notes) {
    SequencedMap<String, List<Typable>> shown = new LinkedHashMap<>();
    int empty = 0;
    for (Map.Entry<String, List<Typable>> group : groups.entrySet()) {
      if (isGiven(group.getValue()) || empty++ < SPARE) {
        shown.put(group.getKey(), group.getValue());
      }
    }
    Element folded = Element.of("details", Element.of("summary", section)).with("class", "section");
    return (shown.values().stream().anyMatch(this::isGiven) ? folded.with("open", "open") : folded)
        .with(fieldsets(shown, hints, notes));
  }

  private boolean isGiven(List<Typable> fields) {
    return fields.stream()
        .anyMatch(
            f -> !typing.shown(f, open.file()).isEmpty() || !typing.held(f, open.file()).isEmpty());
  }

  private Element fieldset(
      String group, List<Typable> fields, Map<String, String> hints, Map<String, String> notes) {
    return new StepBlock(group, fields, typing, open.file(), notes.keySet())
        .toElement(f -> field(f, notes.getOrDefault(f.key(), ""), hints));
  }

  private Node field(Typable field, String note, Map<String, String> hints) {
    Element control = field.toControl(typing.shown(field, open.file()));
    String hint = hints.get(field.key());
    if (isDrug(field.key())) {
      control = control.with("list", DrugHint.LIST).with("autocomplete", "off");
    }
    if (hint != null) {
      control = control.with("aria-describedby", "h-" + field.key());
    }
    List<Node> beside = new ArrayList<>();
    if (hint != null) {
      beside.add(Html.note("hint", hint).with("id", "h-" + field.key()));
    }
    if (!note.isEmpty()) {
      String id = "n-" + field.key();
      control = control.with("aria-invalid", "true").with("aria-describedby", id);
      beside.add(Html.note("doubt", note).with("id", id));
    }
    Element labelled = labelled(field, control).with("data-field", field.key()).with(beside);
    if (Typing.isAlone(field)) {
      labelled = labelled.with("data-alone", "");
    }
    return typing.isAsked(field, open.file()) ? labelled : labelled.with("hidden", "hidden");
  }

  /** A field with its label; buttons of one question are named together. */
  private static Element labelled(Typable field, Element control) {
    if (!field.isQuestion()) {
      return Html.field(field.label(), control);
    }
    String id = "l-" + field.key();
    return division(
        "field asked",
        Element.of("span", field.label()).with("id", id),
        control.with("aria-labelledby", id));
  }

  private static boolean isDrug(String key) {
    return key.startsWith("procedure.before.antithrombotics[") && key.endsWith(".drug");
  }

  /** What is said beside fields while they are typed in, by field; an empty text for nothing. */
  private Map<String, String> hints(CaseContext context) {
    Map<String, String> hints = new TreeMap<>();
    for (Typable field : typing.fields()) {
      if (isDrug(field.key())) {
        String typed = typing.shown(field, open.file());
        hints.put(field.key(), DrugHint.of(typed, context.medicine()));
      } else if (COUNTS.contains(field.key())) {
        GelHint.of(field.key(), open).ifPresent(hint -> hints.put(field.key(), hint));
      }
    }
    return hints;
  }

  private Node results(CaseContext context, StepLook look, Map<String, String> notes) {
    Map<String, Typable> fields = new TreeMap<>();
    typing.fields().forEach(f -> fields.put(f.key(), f));
    Map<String, String> units = context.units().of(open.file());
    Unfolded unfolded = new Unfolded(context, visit, open, look.interpretation());
    PairTable table =
        new PairTable(
            look.interpretation(),
            context.medicine().facts(),
            visit.isAllowed(Permission.READ_REPORT),
            sample -> cell(sample, fields, notes, units),
            unfolded);
    BandRow bands = new BandRow(visit, open, context.status(open), unfolded);
    return Fragment.of(
        unfolded.toField(),
        table.usual(
            bands.toElement(
                key ->
                    Optional.ofNullable(fields.get(key))
                        .map(f -> input(f, notes, ""))
                        .orElse(nothing()))),
        Element.of("details", Element.of("summary", "Other results"), table.others())
            .with("class", "section"),
        sections(
            Map.of(),
            notes,
            typing.fields().stream().filter(f -> f.section().isPresent()).toList()));
  }

  private Node cell(
      Sample sample,
      Map<String, Typable> fields,
      Map<String, String> notes,
      Map<String, String> units) {
    Optional<Typable> field = Optional.ofNullable(fields.get(sample.code()));
    return field
        .map(f -> input(f, notes, units.getOrDefault(sample.code(), "").replace("/uL", "/µL")))
        .orElseGet(Html::nothing);
  }

  /** A field of the table: its label is heard, its unit is shown while it is empty. */
  private Node input(Typable field, Map<String, String> notes, String unit) {
    String note = notes.getOrDefault(field.key(), "");
    Element control =
        field
            .toControl(typing.shown(field, open.file()))
            .with("id", "f-" + field.key())
            .with("aria-label", field.label())
            .with("aria-describedby", "h-" + field.key());
    if (!unit.isEmpty()) {
      control = control.with("placeholder", unit);
    }
    return Fragment.of(
        note.isEmpty() ? control : control.with("aria-invalid", "true"),
        Html.note("doubt", note).with("id", "h-" + field.key()));
  }

  /** What the program makes of what stands in the fields. */
  Node said(CaseContext context) {
    return StepLook.of(this, context.medicine()).toNode();
  }

  /** The same, and what it says beside the fields and in the rows. */
  Node look(CaseContext context) {
    StepLook look = StepLook.of(this, context.medicine());
    List<Node> live = new ArrayList<>();
    if (step == CaseStep.RESULTS) {
      live.add(
          CaseHead.live(
              look.interpretation(),
              open.interpretation(),
              visit.isAllowed(Permission.READ_REPORT)));
      live.add(
          new PairTable(
                  look.interpretation(),
                  context.medicine().facts(),
                  visit.isAllowed(Permission.READ_REPORT),
                  sample -> nothing(),
                  new Unfolded(context, visit, open, look.interpretation()))
              .live());
      for (Typable field : typing.fields()) {
        live.add(beside(field.key(), look.questions().getOrDefault(field.key(), "")));
      }
    } else {
      hints(context).forEach((key, hint) -> live.add(beside(key, hint)));
      live.add(division("unasked").with("data-keys", unasked()));
    }
    return Fragment.of(division("live").with(live).with("hidden", "hidden"), look.toNode());
  }

  /** The fields that are not asked as things stand, with spaces between them. */
  private String unasked() {
    return typing.fields().stream()
        .filter(f -> !typing.isAsked(f, open.file()))
        .map(Typable::key)
        .collect(Collectors.joining(" "));
  }

  private static Element beside(String key, String text) {
    return Element.of("div", text).with("data-at", "h-" + key);
  }
}
