package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.text;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.house.RuleChange;
import cistern.clinic.status.Medicine;
import cistern.clinic.status.OpenCase;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.status.VerdictChange;
import cistern.clinic.status.VerdictChange.Under;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.differential.Prior;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.policy.PolicyReading;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.finding.Printed;
import cistern.measurement.Answer;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.wording.ProbabilityWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.TreeMap;

/** A case with other numbers for prior, cut-offs and variation, beside what it says now. */
final class WhatIf {

  private static final String PRIOR = "prior";
  private static final String USES_MRI = "usesMri";
  private static final String VARIATION = "cv.";
  private static final String SPAN = "figure.strip.span";
  private static final double PER_CENT = 100;
  private static final double FINE = 0.1;
  private static final List<String> CUT_OFFS =
      List.of("kappa-index.upper", "igg-index.upper", "bands.cut-off");

  private final CaseContext context;
  private final PageRequest visit;
  private final OpenCase open;
  private final Facts facts;
  private final Map<String, String> notes = new TreeMap<>();
  private final Map<String, Policy.Change> changes = new LinkedHashMap<>();

  WhatIf(CaseContext context, PageRequest visit, OpenCase open) {
    this.context = context;
    this.visit = visit;
    this.open = open;
    this.facts = context.medicine().facts();
    CUT_OFFS.forEach(key -> read(key, facts.fact(key).unit()));
    read(VARIATION, "%");
  }

  /**
   * One number that may be turned.
   *
   * @param name of its field
   * @param label what it is
   * @param now as it is in force; empty when nothing is stated
   * @param range between which it is turned
   */
  private record Dial(String name, String label, String now, Range range) {}

  /**
   * Where a dial ends and how fine it is.
   *
   * @param least the lower end
   * @param most the upper end
   * @param step between two places
   */
  private record Range(double least, double most, double step) {}

  private List<Dial> dials() {
    List<Dial> all = new ArrayList<>();
    double lower = facts.number("probability.domain.prior.lower") * PER_CENT;
    double upper = facts.number("probability.domain.prior.upper") * PER_CENT;
    all.add(
        new Dial(
            PRIOR,
            "Chance of MS before the fluid, %",
            prior().map(p -> plain(p.middle() * PER_CENT)).orElse(""),
            new Range(lower, upper, 1)));
    all.add(cutOff("kappa-index.upper", "κ index: above from", FINE));
    all.add(cutOff("igg-index.upper", "IgG index: above over", FINE * FINE));
    all.add(cutOff("bands.cut-off", "Bands in the fluid only: positive from", 1));
    double variation = variation().orElse(0.0);
    all.add(
        new Dial(
            VARIATION,
            "Coefficient of variation of every concentration that states none of its own, %",
            variation().map(WhatIf::plain).orElse(""),
            new Range(0, Math.max(1, variation) * facts.number(SPAN), 1)));
    return all;
  }

  private Dial cutOff(String key, String label, double step) {
    double now = facts.number(key);
    double span = facts.number(SPAN);
    double least = Math.max(step, Math.round(now / span / step) * step);
    return new Dial(key, label, plain(now), new Range(least, now * span, step));
  }

  /** The imprecision in force, in per cent, where it is one for all. */
  private Optional<Double> variation() {
    List<Double> all = facts.keys(VARIATION).stream().map(facts::number).distinct().toList();
    return all.size() == 1 ? Optional.of(all.getFirst() * PER_CENT) : Optional.empty();
  }

  private Optional<Prior> prior() {
    return open.interpretation().weighed().differential().prior();
  }

  private static String plain(double value) {
    String text = Printed.decimals(value, 2);
    return text.replaceFirst("\\.?0+$", "");
  }

  private String typed(Dial dial) {
    return visit.fields().containsKey(dial.name()) ? visit.field(dial.name()) : dial.now();
  }

  /** A typed number as a change of the facts, where it is another than the one in force. */
  private void read(String name, String unit) {
    Optional<Dial> dial = dials().stream().filter(d -> d.name().equals(name)).findFirst();
    String typed = dial.map(this::typed).orElse("");
    if (typed.isEmpty() || typed.equals(dial.orElseThrow().now())) {
      return;
    }
    List<String> keys = name.equals(VARIATION) ? facts.keys(VARIATION) : List.of(name);
    RuleChange rule = new RuleChange(0, "", "", keys.getFirst(), typed, unit, "what if", "");
    switch (RulesInForce.read(rule, facts)) {
      case PolicyReading.Understood understood ->
          keys.forEach(
              k -> changes.put(k, understood.policy().changes().values().iterator().next()));
      case PolicyReading.NotValid not -> notes.put(name, not.problems().getFirst().text());
    }
  }

  /** The form, and once something is typed, what it comes to. */
  Node toNode(boolean isAsked) {
    String path = "/cases/" + open.version().caseId() + "/what-if";
    Node said =
        division("what-if-said", isAsked ? said() : nothing())
            .with("id", "what-if-said")
            .with("aria-live", "polite");
    return Fragment.of(
        note("quiet", "Nothing of this is kept: not in the case, not as typing, not in the trail."),
        visit
            .form(path)
            .with("class", "step what-if")
            .with("data-what-if", "what-if-said")
            .with(
                Element.of("fieldset", Element.of("legend", "Other numbers"))
                    .with(dials().stream().map(this::field).toList())
                    .with(usesMri()))
            .with(Html.button("Show what if").with("class", "second-button")),
        said);
  }

  private Element field(Dial dial) {
    String note = notes.getOrDefault(dial.name(), "");
    Element control =
        Html.input(dial.name(), typed(dial))
            .with("inputmode", "decimal")
            .with("autocomplete", "off")
            .with("data-from", plain(dial.range().least()))
            .with("data-to", plain(dial.range().most()))
            .with("data-step", plain(dial.range().step()))
            .with("aria-describedby", "n-" + dial.name());
    return Html.field(dial.label(), note.isEmpty() ? control : control.with("aria-invalid", "true"))
        .with(
            note("hint", "now " + (dial.now().isEmpty() ? "not stated" : dial.now()) + ". " + note)
                .with("id", "n-" + dial.name()));
  }

  private Element usesMri() {
    List<Html.Choice> words =
        Arrays.stream(Answer.values()).map(a -> new Html.Choice(a.word(), a.word())).toList();
    return Html.field("The chance counts the imaging", Html.select(USES_MRI, typedMri(), words));
  }

  private String typedMri() {
    String stated = prior().map(p -> p.usesMri().word()).orElse(Answer.UNKNOWN.word());
    return visit.field(USES_MRI).isEmpty() ? stated : visit.field(USES_MRI);
  }

  /** What the case says now and what it would say, side by side. */
  Node said() {
    Medicine medicine = context.medicine();
    RulesInForce trial = medicine.rules().trying(changes);
    Medicine then = medicine.under(trial, medicine.clock().instant());
    try {
      OpenCase other = other(then);
      Under now = new Under(open, facts);
      List<List<Node>> rows = new ArrayList<>();
      rows.add(row(VerdictChange.ANSWER, VerdictChange.answer(open), VerdictChange.answer(other)));
      rows.add(row("Chance of MS", chance(open), chance(other)));
      VerdictChange.between(now, new Under(other, then.facts())).stream()
          .filter(c -> !c.what().equals(VerdictChange.ANSWER))
          .forEach(c -> rows.add(row(c.what(), c.now(), c.then())));
      return Fragment.of(
          note("kept what-if-mark", "What if, not kept"),
          trouble(),
          Html.table("What if, not kept", List.of("", "Now", "What if"), rows));
    } catch (IllegalArgumentException e) {
      return note("trouble", "With these numbers nothing can be computed: look at them again.")
          .with("role", "alert");
    }
  }

  /** The case under other rules, with its plan as it is: none of these numbers moves that. */
  private OpenCase other(Medicine then) {
    CaseVersion version = version();
    return then.read(version.workup()) instanceof WorkupReading.Understood read
        ? new OpenCase(
            version, open.file(), then.interpret(then.asOfNow(read.workup())), open.plan())
        : open;
  }

  private Node trouble() {
    return notes.isEmpty()
        ? nothing()
        : note("trouble", "Not read, and so left as it is: " + String.join(" ", notes.values()))
            .with("role", "alert");
  }

  private static List<Node> row(String what, String now, String then) {
    return List.of(
        text(what), text(now), now.equals(then) ? text("the same") : Element.of("strong", then));
  }

  private static String chance(OpenCase open) {
    return String.join(
        " ", ProbabilityWords.of(open.interpretation().weighed().differential().probability()));
  }

  /** The version with another prior in its file, which is put nowhere. */
  private CaseVersion version() {
    Dial dial = dials().getFirst();
    String typed = typed(dial).replace(',', '.');
    boolean isSame =
        typed.equals(dial.now())
            && prior().map(p -> p.usesMri().word().equals(typedMri())).orElse(true);
    if (typed.isEmpty() || isSame) {
      return open.version();
    }
    Optional<Double> share = share(typed);
    if (share.isEmpty()) {
      notes.put(PRIOR, "The chance must be a number between 0 and 100.");
      return open.version();
    }
    CaseVersion version = open.version();
    return new CaseVersion(
        version.caseId(),
        version.number(),
        version.at(),
        version.account(),
        version.step(),
        JsonText.of(with(share.get())));
  }

  private static Optional<Double> share(String typed) {
    return typed.matches("\\d{1,3}(\\.\\d{1,6})?") && Double.parseDouble(typed) <= PER_CENT
        ? Optional.of(Double.parseDouble(typed) / PER_CENT)
        : Optional.empty();
  }

  private Json.Structure with(double share) {
    Json number = new Json.Numeral(Double.toString(share));
    SequencedMap<String, Json> stated = new LinkedHashMap<>();
    stated.put("ms", new Json.Sequence(List.of(number, number)));
    stated.put(USES_MRI, new Json.Text(typedMri()));
    SequencedMap<String, Json> members = new LinkedHashMap<>(open.file().members());
    SequencedMap<String, Json> evidence = new LinkedHashMap<>();
    if (members.get("evidence") instanceof Json.Structure before) {
      evidence.putAll(before.members());
    }
    evidence.put(PRIOR, new Json.Structure(stated));
    members.put("evidence", new Json.Structure(evidence));
    return new Json.Structure(members);
  }
}
