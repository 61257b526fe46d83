package cistern.report.cohort;

import cistern.cohort.CohortSummary;
import cistern.cohort.Distribution;
import cistern.cohort.QualityFigure;
import cistern.cohort.Tally;
import cistern.cohort.VerifiedLimit;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.finding.Verdict;
import cistern.interpretation.Caution;
import cistern.report.cohort.CohortChanges.Changed;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Front;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A cohort as a paper that a department presents: what stands out first, the tables after it. */
public final class CohortPaper {

  private static final int MOST_CHANGES = 200;
  private static final int MOST_SAID = 3;
  private static final double MIDDLE = 0.5;

  private final CohortReport report;
  private final Facts facts;
  private final int smallest;
  private final QualitySections quality;
  private final SiteSections site;

  private CohortPaper(CohortReport report, Facts facts) {
    this.report = report;
    this.facts = facts;
    this.smallest = (int) facts.number("cohort.smallest-group");
    this.quality = new QualitySections(report.summary(), smallest);
    this.site = new SiteSections(report, (int) facts.number("cohort.calibration.people"), smallest);
  }

  /** The paper of a report under some facts. */
  public static Paper of(CohortReport report, Facts facts) {
    return new CohortPaper(report, facts).paper();
  }

  private Paper paper() {
    List<Section> sections = new ArrayList<>();
    sections.add(quality.quality());
    quality.byNeedle().ifPresent(sections::add);
    quality.overTime().ifPresent(sections::add);
    quality.amounts().ifPresent(sections::add);
    site.limits().ifPresent(sections::add);
    site.performance().ifPresent(sections::add);
    site.calibration().ifPresent(sections::add);
    quality.readers().ifPresent(sections::add);
    sections.add(verdicts());
    if (report.isCompared()) {
      sections.add(changes());
    }
    sections.add(method());
    String banner =
        Caution.RESEARCH_ONLY.text()
            + (report.isInvented() ? " The people in it are invented." : "");
    return new Paper(
        new Front(
            Paper.Kind.LEAF,
            report.summary().people() == 1
                ? "Cohort of 1 puncture"
                : "Cohort of "
                    + Printed.decimals((double) report.summary().people(), 0)
                    + " punctures",
            period(),
            banner,
            Locale.UK,
            new Paper.Seal.NotNeeded()),
        answer(),
        sections,
        foot());
  }

  private String period() {
    var months = report.summary().byMonth();
    return months.isEmpty()
        ? "No time of a puncture is recorded"
        : "Punctures from " + months.firstKey() + " to " + months.lastKey();
  }

  private String foot() {
    String policy = report.made().policy().map(p -> "local policy " + p).orElse("no local policy");
    return report.made().software() + "; facts: " + report.made().facts() + "; " + policy;
  }

  /** What stands out: limits that do not fit, the needles, what happened most, what changed. */
  private List<Line> answer() {
    List<Line> lines = new ArrayList<>();
    List<String> unfit =
        report.site().limits().stream()
            .filter(l -> l.verified().filter(v -> !v.stands()).isPresent())
            .map(l -> l.code().term())
            .toList();
    List<VerifiedLimit> judged =
        report.site().limits().stream().flatMap(l -> l.verified().stream()).toList();
    if (!unfit.isEmpty()) {
      lines.add(
          Line.of(
              "More controls than may lie above the limit in force for: "
                  + String.join(", ", unfit)
                  + "."));
    } else if (!judged.isEmpty()) {
      lines.add(Line.of("The limits in force fit the controls of this site."));
    }
    needles().map(Line::of).ifPresent(lines::add);
    lines.add(Line.of(mostOften()));
    if (report.isCompared()) {
      lines.add(
          Line.of(
              report.changes().isEmpty()
                  ? "No verdict differs from the earlier table."
                  : report.changes().size() + " verdicts differ from the earlier table."));
    }
    if (report.refused() > 0) {
      lines.add(Line.of(report.refused() + " inputs were not valid and are left out."));
    }
    report
        .groups()
        .columnsConfirmedBy()
        .ifPresent(
            name ->
                lines.add(Line.of("Columns that looked mixed up were confirmed by " + name + ".")));
    return lines;
  }

  private String mostOften() {
    String said =
        report.summary().quality().entrySet().stream()
            .filter(e -> e.getValue().share().filter(s -> s.of() >= smallest).isPresent())
            .filter(e -> e.getValue().yes() > 0)
            .sorted(
                Comparator.comparingDouble(
                    (Map.Entry<QualityFigure, Tally> e) ->
                        -e.getValue().share().orElseThrow().share()))
            .limit(MOST_SAID)
            .map(
                e ->
                    e.getKey().text()
                        + " in "
                        + CohortWords.counted(e.getValue().share().orElseThrow()))
            .collect(Collectors.joining("; "));
    if (!said.isEmpty()) {
      return "Most often: " + said + ".";
    }
    boolean isRecorded =
        report.summary().quality().values().stream()
            .anyMatch(tally -> tally.share().filter(s -> s.of() >= smallest).isPresent());
    return isRecorded
        ? "Nothing untoward is recorded; the table says of how many punctures something is."
        : "Too little is recorded of how the punctures went.";
  }

  private Optional<String> needles() {
    var shown =
        report.summary().byNeedle().entrySet().stream()
            .filter(e -> !e.getKey().startsWith("unknown"))
            .map(
                e ->
                    Map.entry(
                        e.getKey(),
                        e.getValue().getOrDefault(QualityFigure.HEADACHE, Tally.NONE).share()))
            .filter(e -> e.getValue().filter(s -> s.of() >= smallest).isPresent())
            .toList();
    return shown.size() < 2
        ? Optional.empty()
        : Optional.of(
            "Headache afterwards: "
                + shown.stream()
                    .map(e -> CohortWords.share(e.getValue().orElseThrow()) + " with " + e.getKey())
                    .collect(Collectors.joining(", "))
                + ".");
  }

  private Section verdicts() {
    CohortSummary summary = report.summary();
    List<Row> rows = new ArrayList<>();
    summary
        .verdicts()
        .forEach(
            (code, counts) -> {
              if (summary.values().containsKey(code)) {
                rows.add(verdictRow(code, counts));
              }
            });
    List<Line> lines = new ArrayList<>();
    summary
        .criteria()
        .forEach(
            (edition, counts) ->
                lines.add(
                    Line.of(
                        edition
                            + ": "
                            + counts.entrySet().stream()
                                .map(e -> e.getKey() + " " + e.getValue())
                                .collect(Collectors.joining(", "))
                            + ".")));
    return Section.annex(
        "Verdicts",
        new Table(
            "punctures by verdict, findings with at least one value",
            List.of(
                "finding",
                "middle value",
                "within",
                "above",
                "below",
                "borderline",
                "undetermined"),
            rows),
        new Items("Criteria", lines));
  }

  private Row verdictRow(FindingCode code, Map<Verdict, Long> counts) {
    double middle =
        report
            .summary()
            .values()
            .getOrDefault(code, Distribution.NONE)
            .spectrum()
            .quantile(MIDDLE)
            .orElse(0);
    return Row.of(
        CohortWords.term(code),
        Printed.of(code, middle),
        count(counts, Verdict.WITHIN),
        count(counts, Verdict.ABOVE),
        count(counts, Verdict.BELOW),
        count(counts, Verdict.BORDERLINE),
        count(counts, Verdict.UNDETERMINED));
  }

  private static String count(Map<Verdict, Long> counts, Verdict verdict) {
    return Long.toString(counts.getOrDefault(verdict, 0L));
  }

  private Section changes() {
    List<Changed> shown =
        report.changes().subList(0, Math.min(MOST_CHANGES, report.changes().size()));
    Map<String, Long> byColumn =
        report.changes().stream()
            .collect(Collectors.groupingBy(Changed::column, Collectors.counting()));
    List<Row> counted =
        byColumn.entrySet().stream()
            .sorted(Map.Entry.<String, Long>comparingByValue().reversed())
            .map(e -> Row.of(e.getKey(), Long.toString(e.getValue())))
            .toList();
    return Section.annex(
        "What changed against the earlier table",
        new Table("changed verdicts by column", List.of("column", "changed"), counted),
        new Table(
            report.changes().size() > MOST_CHANGES
                ? "the first " + MOST_CHANGES + "; all stand in changes.csv"
                : "each changed verdict",
            List.of("work-up", "column", "before", "now", "why"),
            shown.stream()
                .map(c -> Row.of(c.workup(), c.column(), c.from(), c.to(), c.why()))
                .toList()));
  }

  private Section method() {
    return Section.annex(
        "How this was computed",
        new Paragraphs(
            List.of(
                Line.of(
                    "Shares: interval of Wilson 1927, exact (Clopper and Pearson 1934) where none"
                        + " or all had it."),
                Line.of(
                    "Control limits: three standard errors around the share of all months (p"
                        + " chart)."),
                ruled(
                    "Limits: from %s people by rank, the (n + 1)p-th value with ranks of the"
                        + " binomial law at a confidence of %s; from %s people by Horn's robust"
                        + " estimate; from fewer none.",
                    "cohort.reference-ranks.people",
                    "cohort.rank-confidence",
                    "cohort.reference-robust.people"),
                Line.of("Limits by age: linear quantile regression (Koenker and Bassett 1978)."),
                ruled(
                    "A published limit stands while no more controls lie above it than a right"
                        + " limit would leave there; from %s controls on.",
                    "cohort.verification.people"),
                ruled(
                    "Area under the curve: interval of DeLong 1988, from %s people on each side."
                        + " Cut-off: Youden's index, its interval from samples drawn anew.",
                    "cohort.performance.people"),
                Line.of(
                    "Agreement: Cohen's κ with the standard error of Fleiss, Cohen and Everitt"
                        + " 1969."),
                Line.of(
                    "Who counts as a case or a control was named by a person; nothing here decides"
                        + " it."))));
  }

  /** A sentence with numbers of the facts in force, and where they come from. */
  private Line ruled(String sentence, String... keys) {
    Object[] numbers =
        Stream.of(keys).map(key -> Printed.decimals(facts.number(key), places(key))).toArray();
    return new Line(String.format(Locale.ROOT, sentence, numbers), facts.grounds(keys));
  }

  private int places(String key) {
    return facts.number(key) < 1 ? 2 : 0;
  }
}
