package cistern.followup;

import cistern.analysis.Puncture;
import cistern.bands.BandReading;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.followup.Comparison.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What a series means: comparability first, then bands, then what passed. */
final class Remarks {

  private static final List<FindingCode> TRANSIENT =
      List.of(FindingCode.LEUKOCYTES, FindingCode.ALBUMIN_QUOTIENT, FindingCode.TOTAL_PROTEIN);

  private final Facts facts;

  Remarks(Facts facts) {
    this.facts = facts;
  }

  List<Remark> of(List<Puncture> punctures, List<Step> steps, boolean isReordered) {
    List<Remark> all = new ArrayList<>();
    if (Comparisons.refusal(punctures).isPresent()) {
      all.add(
          measured(
              "person-declared",
              "The files do not show that they are of one person; whoever asked declared it."));
    }
    for (Step step : steps) {
      method(step, all);
      comparability(step, all);
      bands(step, all);
      values(step, all);
      passed(step, all);
    }
    if (isReordered) {
      all.add(measured("order", "The files are put in order of their draw times."));
    }
    return all;
  }

  private void method(Step step, List<Remark> all) {
    if (step.bands().isMethodChanged()) {
      all.add(
          new Remark(
              "band-method-changed",
              between(step)
                  + "the method of the bands changed ("
                  + describe(step.bands().from())
                  + "; then "
                  + describe(step.bands().to())
                  + "), so a change of result can be a change of method. "
                  + facts.word("persistence.method"),
              facts.grounds("persistence.method")));
    }
  }

  private static void comparability(Step step, List<Remark> all) {
    List<String> general = new Comparability(step.earlier(), step.later()).general();
    if (!general.isEmpty()) {
      all.add(
          measured(
              "comparability",
              between(step) + "keep in mind: " + String.join("; ", general) + "."));
    }
  }

  private void bands(Step step, List<Remark> all) {
    String both =
        between(step)
            + "bands "
            + describe(step.bands().from())
            + ", then "
            + describe(step.bands().to())
            + ". ";
    switch (step.bands().verdict()) {
      case PERSISTENT -> all.add(series("bands-persistent", both + "They persist. ", "changed"));
      case GAINED -> all.add(series("bands-gained", both + "They are new. ", "gained"));
      case LOST -> all.add(lost(both + "No longer demonstrated at the cut-off. "));
      case METHOD_CHANGED ->
          all.add(series("bands-method", both + "Result and method changed together. ", "changed"));
      case NOT_DEMONSTRATED ->
          all.add(again("bands-not-demonstrated", both + "Not demonstrated. "));
      case BORDERLINE -> all.add(again("bands-borderline", both + "Borderline. "));
      case UNDETERMINED ->
          all.add(
              measured(
                  "bands-undetermined",
                  both + "Undetermined: bands are not known at both punctures."));
    }
  }

  private Remark lost(String start) {
    Remark series = series("bands-lost", start, "lost");
    return new Remark(
        series.code(),
        series.text()
            + " A prompt to think of "
            + facts.word("persistence.lost.think-of")
            + "; never a verdict.",
        series.grounds().and(facts.grounds("persistence.lost.think-of")));
  }

  private Remark again(String code, String start) {
    return new Remark(
        code, start + facts.word("persistence.repeat"), facts.grounds("persistence.repeat"));
  }

  /** The rates of two published series beside the result. */
  private Remark series(String code, String start, String change) {
    Persistence ms = Persistence.of(facts, "ms", change);
    Persistence mixed = Persistence.of(facts, "mixed", change);
    String what =
        switch (change) {
          case "gained" -> "bands came at a repeat in ";
          case "lost" -> "bands went at a repeat in ";
          default -> "the result changed at a repeat in ";
        };
    return new Remark(
        code,
        start
            + "Published: in MS "
            + what
            + ms.toText()
            + "; in a mixed series in "
            + mixed.toText()
            + ".",
        ms.grounds().and(mixed.grounds()));
  }

  private static void values(Step step, List<Remark> all) {
    String significant =
        step.changes().stream()
            .filter(c -> c.verdict() == Change.Verdict.SIGNIFICANT)
            .map(Change::term)
            .collect(Collectors.joining(", "));
    boolean isCompared =
        step.changes().stream().anyMatch(c -> c.verdict() != Change.Verdict.NOT_COMPARABLE);
    if (!significant.isEmpty()) {
      all.add(
          measured(
              "changed",
              between(step) + "changed by more than measurement explains: " + significant + "."));
    } else {
      all.add(
          measured(
              isCompared ? "within-variation" : "nothing-compares",
              between(step)
                  + (isCompared
                      ? "no value changed by more than measurement explains."
                      : "no value could be compared.")));
    }
  }

  private static void passed(Step step, List<Remark> all) {
    String passed =
        TRANSIENT.stream()
            .filter(
                code ->
                    step.earlier().findings().verdict(code) == Verdict.ABOVE
                        && step.later().findings().verdict(code) == Verdict.WITHIN)
            .map(FindingCode::term)
            .collect(Collectors.joining(", "));
    if (!passed.isEmpty()) {
      all.add(
          measured(
              "transient",
              between(step)
                  + passed
                  + " came back within the limit: a passing illness at the first puncture is one"
                  + " explanation."));
    }
  }

  private static String describe(BandReading reading) {
    String count =
        reading.counts().csfOnly().isPresent()
            ? reading.counts().csfOnly().getAsInt() + " CSF-only, "
            : "";
    String method = BandChange.method(reading.report()).map(m -> ", " + m).orElse("");
    return reading.verdict().word() + " (" + count + "cut-off " + reading.cutOff() + method + ")";
  }

  private static String between(Step step) {
    return step.earlier().workup() + " to " + step.later().workup() + ": ";
  }

  private static Remark measured(String code, String text) {
    return new Remark(code, text, Grounds.MEASURED);
  }
}
