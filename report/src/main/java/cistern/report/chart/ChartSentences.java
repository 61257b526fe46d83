package cistern.report.chart;

import static cistern.finding.FindingCode.ALBUMIN_QUOTIENT;
import static cistern.finding.FindingCode.GLUCOSE_RATIO;
import static cistern.finding.FindingCode.LACTATE;
import static cistern.finding.FindingCode.LEUKOCYTES;
import static cistern.finding.FindingCode.TOTAL_PROTEIN;

import cistern.bedside.TreatmentKind;
import cistern.criteria.CriteriaResult;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.WrittenUnit;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.report.chart.ChartComment.Sentence;
import cistern.report.wording.PrintedTime;
import cistern.report.wording.ValueWords;
import cistern.report.wording.WhenDrawn;
import cistern.statement.BarrierStatement;
import cistern.statement.Conclusion;
import cistern.statement.NextStep;
import cistern.statement.Said;
import cistern.statement.Statement;
import cistern.statement.UrgentStatement;
import cistern.urgent.Stop;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The sentences of a chart comment, in their order, each with the terms of the trade. */
final class ChartSentences {

  /** What fills a comment that would say too little to stand alone. */
  static final List<String> MORE =
      List.of(
          "To be read with history, examination and imaging.",
          "Normal means within the limit used here; limits and their sources stand in the full"
              + " report.",
          "What is not named was not measured or could not be judged from this sample.",
          "Local practice and the responsible clinician decide.");

  private static final List<Analyte> DIFFERENTIAL =
      List.of(
          Analyte.LYMPHOCYTES,
          Analyte.MONOCYTES,
          Analyte.NEUTROPHILS,
          Analyte.EOSINOPHILS,
          Analyte.PLASMA_CELLS);

  /** What is said beside the urgent rules, by code. */
  private static final Set<String> BESIDE = Set.of("herpes-pcr", "childhood-score");

  private final Interpretation said;
  private final WhenDrawn when;
  private final Panel panel;

  ChartSentences(Interpretation said, PrintedTime times) {
    this.said = said;
    this.when = new WhenDrawn(times);
    this.panel = said.panel().panel();
  }

  List<Sentence> all() {
    List<Sentence> all = new ArrayList<>();
    first().ifPresent(text -> all.add(new Sentence(0, text)));
    all.add(new Sentence(3, thenAsked()));
    all.add(new Sentence(2, sample()));
    all.add(new Sentence(1, cells()));
    all.add(new Sentence(4, judged("Total protein", TOTAL_PROTEIN)));
    all.add(new Sentence(2, barrier()));
    all.add(new Sentence(5, chemistry()));
    all.addAll(new ImmuneSentences(said).all());
    all.add(new Sentence(1, summary()));
    all.add(new Sentence(3, criteria()));
    all.add(new Sentence(4, open()));
    all.add(new Sentence(1, given()));
    all.add(new Sentence(2, limits()));
    if (said.cautions().contains(Caution.INVENTED)) {
      all.add(new Sentence(0, "Invented data."));
    }
    return all;
  }

  /** What is urgent; else what stops a verdict. */
  private Optional<String> first() {
    String urgent =
        said.statements().stream()
            .filter(s -> s instanceof UrgentStatement && s.isUrgent())
            .map(Statement::text)
            .collect(Collectors.joining(" "));
    return urgent.isEmpty()
        ? said.alerts().stops().stream()
            .filter(s -> s.effect() == Stop.Effect.CONTRADICTION)
            .map(Stop::text)
            .findFirst()
        : Optional.of(urgent);
  }

  /** What must be asked or done before anybody signs a verdict. */
  private String thenAsked() {
    return said.statements().stream()
        .filter(
            s ->
                s instanceof Said(String code, String text)
                    ? BESIDE.contains(code)
                    : s instanceof UrgentStatement && !s.isUrgent())
        .map(Statement::text)
        .collect(Collectors.joining(" "));
  }

  /** What was given before the fluid was drawn, with its date. */
  private String given() {
    String drugs = String.join(", ", said.alerts().treatments().values());
    return drugs.isEmpty() ? "" : "Given before: " + drugs + ".";
  }

  private String sample() {
    Draw csf = panel.csf();
    List<String> parts = new ArrayList<>();
    parts.add(csf.site().map(s -> ChartWords.sentence(s) + " CSF").orElse("CSF") + drawn(csf));
    csf.appearance().ifPresent(parts::add);
    cells(Analyte.ERYTHROCYTES).ifPresent(parts::add);
    parts.add(when.serum(said.panel()));
    return String.join(", ", parts) + ".";
  }

  private String drawn(Draw csf) {
    return csf.at().map(t -> " of " + when.times().day(t)).orElse(", draw time not given");
  }

  private String cells() {
    Optional<String> count = cells(Analyte.LEUKOCYTES);
    if (count.isEmpty()) {
      return "Cells not counted.";
    }
    String verdict =
        switch (said.findings().verdict(LEUKOCYTES)) {
          case ABOVE -> "raised";
          case WITHIN, BELOW -> "normal";
          case BORDERLINE -> "borderline";
          case UNDETERMINED -> "not judged";
        };
    String kinds =
        DIFFERENTIAL.stream()
            .flatMap(kind -> share(kind).stream())
            .collect(Collectors.joining(", "));
    Finding without = finding(FindingCode.LEUKOCYTES_CORRECTED);
    boolean isBloody = finding(FindingCode.ERYTHROCYTES).isAbove() && without.hasValue();
    return count.get()
        + " ("
        + verdict
        + (isBloody ? "; " + ValueWords.value(without) + " without the blood" : "")
        + (kinds.isEmpty() ? "" : "; " + kinds)
        + ").";
  }

  private Optional<String> share(Analyte kind) {
    return panel
        .find(Sample.csf(kind))
        .map(m -> ValueWords.percent(m.value()) + " % " + kind.term());
  }

  /** So many cells with their unit, if they were counted. */
  private Optional<String> cells(Analyte kind) {
    Sample sample = Sample.csf(kind);
    Optional<WrittenUnit> unit = said.puncture().units().find(sample);
    return panel.find(sample).map(m -> cells(m.value(), kind.term(), unit));
  }

  private static String cells(Interval count, String kinds, Optional<WrittenUnit> unit) {
    String number =
        unit.map(u -> ValueWords.reported(count, u)).orElseGet(() -> ValueWords.reported(count));
    String kind = number.equals("1") ? kinds.substring(0, kinds.length() - 1) : kinds;
    return unit.map(u -> u.of(number, kind)).orElseGet(() -> number + " " + kind + "/µL");
  }

  private String barrier() {
    Finding quotient = finding(ALBUMIN_QUOTIENT);
    if (!quotient.hasValue()) {
      return "QAlb not available.";
    }
    String limit =
        quotient.limits().isKnown()
            ? " (limit "
                + ValueWords.limit(quotient).replace("≤ ", "")
                + ValueWords.rule(quotient).map(r -> ", " + r).orElse("")
                + ")"
            : "";
    String words =
        switch (quotient.verdict()) {
          case ABOVE ->
              (isSevere() ? "severe" : "mild to moderate")
                  + " blood-CSF barrier dysfunction or slowed CSF flow";
          case WITHIN, BELOW, BORDERLINE -> "barrier function normal";
          case UNDETERMINED -> "barrier function not judged";
        };
    return "QAlb " + ValueWords.valueWithUnit(quotient) + limit + ": " + words + ".";
  }

  private boolean isSevere() {
    return said.statements().stream()
        .anyMatch(s -> s instanceof BarrierStatement barrier && barrier.isSevere());
  }

  private String chemistry() {
    List<String> parts =
        Stream.of(
                ChartWords.judged("glucose ratio", finding(GLUCOSE_RATIO)),
                ChartWords.judged("lactate", finding(LACTATE)))
            .flatMap(Optional::stream)
            .toList();
    return parts.isEmpty() ? "" : ChartWords.sentence(String.join(", ", parts)) + ".";
  }

  private String judged(String name, FindingCode code) {
    return ChartWords.judged(name, finding(code)).map(v -> v + ".").orElse("");
  }

  private String summary() {
    Optional<Conclusion> answer =
        said.statements().stream()
            .filter(Conclusion.class::isInstance)
            .map(Conclusion.class::cast)
            .findFirst();
    return answer
        .filter(a -> !said.alerts().isSilentOfMs())
        .map(a -> "Summary: " + summary(a) + ".")
        .orElse("");
  }

  private static String summary(Conclusion answer) {
    return switch (answer) {
      case Conclusion.SynthesisDemonstrated yes ->
          "humoral intrathecal immune response; compatible with, not specific for, multiple"
              + " sclerosis";
      case Conclusion.SynthesisSuggested perhaps ->
          "a humoral intrathecal immune response is suggested, not settled";
      case Conclusion.SynthesisEquivocal unclear ->
          "equivocal as to a humoral intrathecal immune response";
      case Conclusion.SynthesisNotDemonstrated no ->
          "no evidence of a humoral intrathecal immune response; multiple sclerosis stays possible";
      case Conclusion.SynthesisUndetermined open ->
          "whether there is a humoral intrathecal immune response is undetermined";
    };
  }

  private String criteria() {
    if (!said.workup().clinical().isEvidenceStated() || said.alerts().isInfant()) {
      return "";
    }
    return "Criteria: "
        + said.weighed().criteria().stream()
            .map(ChartSentences::edition)
            .collect(Collectors.joining("; "))
        + ".";
  }

  private static String edition(CriteriaResult result) {
    return result.edition() + " " + result.verdict().word().replace('-', ' ');
  }

  private String open() {
    List<String> steps =
        said.statements().stream()
            .filter(NextStep.class::isInstance)
            .map(Statement::text)
            .limit(1)
            .toList();
    return steps.isEmpty() ? "" : "Open: " + steps.getFirst();
  }

  /** Treatment and blood that limit what was said. */
  private String limits() {
    List<String> limits = new ArrayList<>();
    List<String> present =
        Stream.of(Circumstance.values())
            .filter(c -> panel.answer(c) == cistern.measurement.Answer.YES)
            .filter(c -> !isGiven(c))
            .map(ChartSentences::term)
            .toList();
    if (!present.isEmpty()) {
      limits.add("Limited by " + String.join(", ", present) + ".");
    }
    if (said.problems().stream().anyMatch(cistern.panel.BloodContaminatedCsf.class::isInstance)) {
      limits.add("Blood in the sample: immunoglobulin results are unreliable.");
    }
    if (!said.panel().suspected().isEmpty()) {
      limits.add("A value is doubted and withheld until the laboratory has checked it.");
    }
    return String.join(" ", limits);
  }

  /** Whether it stands among the drugs that were given before. */
  private boolean isGiven(Circumstance circumstance) {
    Set<TreatmentKind> given = said.alerts().treatments().keySet();
    return switch (circumstance) {
      case CORTICOSTEROIDS -> given.contains(TreatmentKind.STEROIDS);
      case B_CELL_DEPLETION -> given.stream().anyMatch(TreatmentKind::isDepleting);
      case IMMUNOGLOBULIN_INFUSION -> given.contains(TreatmentKind.IMMUNOGLOBULIN);
      case PLASMA_EXCHANGE -> given.contains(TreatmentKind.PLASMA_EXCHANGE);
      case MONOCLONAL_GAMMOPATHY, RENAL_FAILURE, PREGNANCY -> false;
    };
  }

  private static String term(Circumstance circumstance) {
    return switch (circumstance) {
      case IMMUNOGLOBULIN_INFUSION -> "immunoglobulin infusion";
      case PLASMA_EXCHANGE -> "plasma exchange";
      case CORTICOSTEROIDS -> "corticosteroids";
      case B_CELL_DEPLETION -> "B-cell depletion";
      case MONOCLONAL_GAMMOPATHY -> "monoclonal gammopathy";
      case RENAL_FAILURE -> "renal failure";
      case PREGNANCY -> "pregnancy";
    };
  }

  private Finding finding(FindingCode code) {
    return said.findings().get(code);
  }
}
