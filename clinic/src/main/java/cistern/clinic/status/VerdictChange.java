package cistern.clinic.status;

import cistern.criteria.CriteriaResult;
import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.fact.UnitKey;
import cistern.finding.Finding;
import cistern.finding.Problem;
import cistern.interpretation.Interpretation;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.paper.Paper;
import cistern.report.paper.PaperText;
import cistern.report.plan.PlanPaper;
import cistern.report.wording.PrintedTime;
import cistern.report.wording.ValueWords;
import cistern.urgent.Urgency;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Something that a case says otherwise under other rules.
 *
 * @param what of the case
 * @param now under the rules in force
 * @param then under the others
 * @param isVerdict whether it is a verdict; else only numbers, limits or words differ
 */
public record VerdictChange(String what, String now, String then, boolean isVerdict) {

  /** What is changed when the first sentence is: its words, for the verdicts stand beside it. */
  public static final String ANSWER = "Answer";

  private static final String NOTHING = "–";
  private static final int WORDS_SHOWN = 2;

  /** What only papers ask for. */
  private static final List<String> PRINTING = List.of("page.", "figure.", "label.", UnitKey.START);

  /**
   * One case under some rules.
   *
   * @param said what it says
   * @param facts in force then
   */
  public record Under(OpenCase said, Facts facts) {
    private Interpretation interpretation() {
      return said.interpretation();
    }
  }

  /**
   * Everything that differs, what matters most first; where no verdict does, also the first words
   * on its papers.
   */
  public static List<VerdictChange> between(Under now, Under then) {
    List<VerdictChange> all = new ArrayList<>();
    urgent(all, now.interpretation(), then.interpretation());
    String before = answer(now.said());
    String after = answer(then.said());
    if (!before.equals(after)) {
      all.add(new VerdictChange(ANSWER, orNothing(before), orNothing(after), false));
    }
    criteria(all, now.interpretation(), then.interpretation());
    Function<Under, String> go = u -> u.said().plan().decision().verdict().go().text();
    add(all, "Plan of the puncture", go.apply(now), go.apply(then));
    Function<Under, String> bands = u -> u.interpretation().bands().verdict().word();
    add(all, "Bands", bands.apply(now), bands.apply(then));
    for (Finding finding : now.interpretation().findings().all()) {
      if (finding.isAsked()) {
        finding(all, finding, then.interpretation().findings().get(finding.code()));
      }
    }
    problems(all, now.interpretation(), then.interpretation());
    if (all.isEmpty() && !isPrintedAlike(now, then)) {
      papers(all, lines(now), lines(then));
    }
    return all;
  }

  /** Whether nothing that is printed can differ, which is quicker to see than to print. */
  private static boolean isPrintedAlike(Under now, Under then) {
    Interpretation before = now.interpretation();
    Interpretation after = then.interpretation();
    return before.findings().all().equals(after.findings().all())
        && before.weighed().equals(after.weighed())
        && before.alerts().equals(after.alerts())
        && now.said().plan().equals(then.said().plan())
        && printing(now.facts()).equals(printing(then.facts()));
  }

  private static List<Fact> printing(Facts facts) {
    return PRINTING.stream().flatMap(start -> facts.keys(start).stream()).map(facts::fact).toList();
  }

  /** The first sentence of what a case says; empty where nothing is to be said yet. */
  public static String answer(OpenCase open) {
    return open.interpretation().statements().stream()
        .limit(1)
        .map(s -> s.text())
        .collect(Collectors.joining());
  }

  private static void add(List<VerdictChange> all, String what, String now, String then) {
    if (!now.equals(then)) {
      all.add(new VerdictChange(what, orNothing(now), orNothing(then), true));
    }
  }

  private static String orNothing(String text) {
    return text.isEmpty() ? NOTHING : text;
  }

  private static void finding(List<VerdictChange> all, Finding now, Finding then) {
    String before = words(now);
    String after = words(then);
    if (!before.equals(after)) {
      boolean isVerdict = now.verdict() != then.verdict();
      all.add(new VerdictChange(now.code().term(), before, after, isVerdict));
    }
  }

  /** Verdict, value with its interval, and limit. */
  private static String words(Finding finding) {
    String interval = ValueWords.interval(finding);
    String value = ValueWords.valueWithUnit(finding);
    return Stream.of(
            finding.verdict().word(),
            finding.hasValue() && !interval.isEmpty() ? value + " (" + interval + ")" : value,
            finding.limits().isKnown() ? "limit " + ValueWords.limit(finding) : "",
            ValueWords.greyZone(finding).map(z -> "borderline " + z).orElse(""))
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining(", "));
  }

  private static void urgent(List<VerdictChange> all, Interpretation now, Interpretation then) {
    Function<Interpretation, List<String>> said =
        i ->
            i.alerts().urgent().holding().stream()
                .map(Urgency::words)
                .map(Urgency.Words::say)
                .toList();
    only(said.apply(now), said.apply(then))
        .forEach(t -> all.add(new VerdictChange("Urgent", t, NOTHING, true)));
    only(said.apply(then), said.apply(now))
        .forEach(t -> all.add(new VerdictChange("Urgent", NOTHING, t, true)));
  }

  private static void criteria(List<VerdictChange> all, Interpretation now, Interpretation then) {
    List<CriteriaResult> after = then.weighed().criteria();
    for (int i = 0; i < after.size(); i++) {
      CriteriaResult before = now.weighed().criteria().get(i);
      String what = "Criteria of " + before.edition();
      add(all, what, before.verdict().word(), after.get(i).verdict().word());
    }
  }

  private static void problems(List<VerdictChange> all, Interpretation now, Interpretation then) {
    List<String> before = now.problems().stream().map(Problem::text).toList();
    List<String> after = then.problems().stream().map(Problem::text).toList();
    only(before, after).forEach(t -> all.add(new VerdictChange("To look at", t, NOTHING, false)));
    only(after, before).forEach(t -> all.add(new VerdictChange("To look at", NOTHING, t, false)));
  }

  private static void papers(List<VerdictChange> all, List<String> now, List<String> then) {
    List<String> before = only(now, then);
    List<String> after = only(then, now);
    if (!before.isEmpty() || !after.isEmpty()) {
      all.add(new VerdictChange("Words on its papers", first(before), first(after), false));
    }
  }

  private static String first(List<String> lines) {
    return orNothing(lines.stream().limit(WORDS_SHOWN).collect(Collectors.joining(" … ")));
  }

  private static List<String> only(List<String> these, List<String> others) {
    Set<String> left = new LinkedHashSet<>(these);
    others.forEach(left::remove);
    return List.copyOf(left);
  }

  /** What is printed of a case, without what names program and policy. */
  private static List<String> lines(Under under) {
    Interpretation said = under.interpretation();
    Paper report = Page.of("", under.facts()).toPaper(said, Audience.CLINICIAN);
    Paper plan =
        PlanPaper.of(said.workup(), under.said().plan(), PrintedTime.of(under.facts()), "");
    Paper bare = new Paper(report.front(), report.answer(), report.sections(), "");
    return Stream.of(bare, plan)
        .flatMap(paper -> PaperText.of(paper).lines())
        .map(String::strip)
        .toList();
  }
}
