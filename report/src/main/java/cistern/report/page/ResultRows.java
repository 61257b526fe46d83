package cistern.report.page;

import cistern.bands.BandReading;
import cistern.bands.BandVerdict;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Chances;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.report.figure.Ruler;
import cistern.report.look.ReportFacts;
import cistern.report.paper.Paper.Amount;
import cistern.report.paper.Paper.Judgement;
import cistern.report.paper.Paper.Result;
import cistern.report.wording.BandWords;
import cistern.report.wording.ValueWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Findings and bands as rows of a table of results. */
final class ResultRows {

  /** What a work-up usually holds of the fluid. */
  private static final Set<Analyte> USUAL =
      Collections.unmodifiableSet(
          EnumSet.of(
              Analyte.ALBUMIN,
              Analyte.IGG,
              Analyte.IGA,
              Analyte.IGM,
              Analyte.KAPPA,
              Analyte.TOTAL_PROTEIN,
              Analyte.GLUCOSE,
              Analyte.LACTATE,
              Analyte.LEUKOCYTES,
              Analyte.ERYTHROCYTES,
              Analyte.LYMPHOCYTES,
              Analyte.MEASLES_IGG,
              Analyte.RUBELLA_IGG,
              Analyte.VARICELLA_ZOSTER_IGG,
              Analyte.BORRELIA_IGG));

  private static final String NEAR = "page.near-limit.chance";
  private static final String BETWEEN = "; ";
  private static final String UNUSABLE = "not usable";
  private static final String BLOCK = "beside a spinal block it says nothing of antibody";

  private final Interpretation said;
  private final Facts facts;

  ResultRows(Interpretation said, Facts facts) {
    this.said = said;
    this.facts = ReportFacts.of(facts);
  }

  /** Every value with its ruler, group by group, and the bands among them. */
  List<Result> withRulers() {
    Ruler ruler = Ruler.of(facts);
    List<Result> rows = new ArrayList<>();
    for (FindingGroup group : shown()) {
      if (group == FindingGroup.LIGHT_CHAINS) {
        bands().ifPresent(rows::add);
      }
      findings(group)
          .forEach(
              f ->
                  rows.add(
                      row(
                          group,
                          f,
                          Optional.of(
                              ruler.toFigure(
                                  "ruler-" + f.code().code(), f, said.panel().panel())))));
    }
    return rows;
  }

  /** What is read without the blood only says something where there is blood. */
  private List<FindingGroup> shown() {
    return Arrays.stream(FindingGroup.values())
        .filter(g -> g != FindingGroup.BLOOD || isBloody())
        .toList();
  }

  private boolean isBloody() {
    return said.findings().verdict(FindingCode.ERYTHROCYTES) == Verdict.ABOVE;
  }

  /** Cells and chemistry alone, without drawings. */
  List<Result> ofFluid() {
    List<Result> rows = new ArrayList<>(plain(FindingGroup.FLUID));
    cells().forEach(rows::add);
    if (isBloody()) {
      rows.addAll(plain(FindingGroup.BLOOD));
    }
    return rows;
  }

  /** Every value, without drawings, in the order of a letter: cells first. */
  List<Result> plain() {
    MeasuredValues measured = new MeasuredValues(said);
    List<Result> rows = new ArrayList<>();
    measured.pair(Analyte.GLUCOSE).forEach(rows::add);
    rows.addAll(ofFluid());
    measured.pair(Analyte.ALBUMIN).forEach(rows::add);
    rows.addAll(plain(FindingGroup.BARRIER));
    measured.pair(Analyte.IGG).forEach(rows::add);
    rows.addAll(plain(FindingGroup.IGG));
    measured.pair(Analyte.IGA).forEach(rows::add);
    rows.addAll(plain(FindingGroup.IGA));
    measured.pair(Analyte.IGM).forEach(rows::add);
    rows.addAll(plain(FindingGroup.IGM));
    bands().ifPresent(rows::add);
    measured.pair(Analyte.KAPPA).forEach(rows::add);
    measured.pair(Analyte.LAMBDA).forEach(rows::add);
    rows.addAll(plain(FindingGroup.LIGHT_CHAINS));
    rows.addAll(plain(FindingGroup.ANTIBODIES));
    rows.addAll(plain(FindingGroup.SERUM));
    return rows;
  }

  private List<Result> plain(FindingGroup group) {
    return findings(group).map(f -> row(group, f, Optional.empty())).toList();
  }

  private Stream<Finding> findings(FindingGroup group) {
    return said.findings().all().stream()
        .filter(f -> f.hasValue() && FindingGroup.of(f.code()) == group);
  }

  private Result row(
      FindingGroup group, Finding finding, Optional<cistern.report.figure.Figure> ruler) {
    return new Result(
        group.heading(),
        finding.code().term(),
        amount(finding),
        isAboveBlock(group) ? unusable(finding) : judgement(finding),
        isAboveBlock(group) ? BLOCK : note(finding),
        ruler,
        finding.grounds());
  }

  private static Amount amount(Finding finding) {
    boolean isShare = finding.code().print() == FindingCode.Print.FRACTION;
    String value = ValueWords.value(finding);
    return isShare
        ? new Amount(value.replace(" %", ""), "%", ValueWords.interval(finding))
        : new Amount(value, ValueWords.unit(finding), ValueWords.interval(finding));
  }

  private static Judgement judgement(Finding finding) {
    return new Judgement(limit(finding), Optional.of(finding.verdict()), finding.verdict().word());
  }

  private static Judgement unusable(Finding finding) {
    return new Judgement(limit(finding), Optional.of(Verdict.UNDETERMINED), UNUSABLE);
  }

  private static String limit(Finding finding) {
    return finding.limits().isKnown() ? ValueWords.limit(finding) : "no limit known";
  }

  /** Whether a spinal block takes the meaning from the antibodies of a group. */
  private boolean isAboveBlock(FindingGroup group) {
    return said.alerts().isBlocked() && group.isOfAntibody();
  }

  private String note(Finding finding) {
    return Stream.of(
            ValueWords.rule(finding).map(r -> "limit " + r).orElse(""),
            ValueWords.greyZone(finding).map(g -> "grey zone " + g).orElse(""),
            chance(finding),
            finding.note())
        .filter(r -> !r.isEmpty())
        .collect(Collectors.joining(BETWEEN));
  }

  /** In words what measurement error leaves open; empty where it leaves nothing open. */
  private String chance(Finding finding) {
    double least = facts.number(NEAR);
    OptionalDouble above = finding.uncertainty().probabilityAbove();
    return above.isPresent() && Math.min(above.getAsDouble(), 1 - above.getAsDouble()) >= least
        ? Chances.toLieAbove(above.getAsDouble())
        : "";
  }

  private Optional<Result> bands() {
    BandReading bands = said.bands();
    if (!bands.isReported()) {
      return Optional.empty();
    }
    String count =
        bands.counts().csfOnly().isPresent()
            ? String.valueOf(bands.counts().csfOnly().getAsInt())
            : "";
    return Optional.of(
        new Result(
            "Bands",
            "oligoclonal bands",
            new Amount(count, count.isEmpty() ? "" : "CSF-only", ""),
            said.alerts().isBandsUnknown()
                ? new Judgement("", Optional.of(Verdict.UNDETERMINED), UNUSABLE)
                : new Judgement(
                    "< " + bands.cutOff(),
                    Optional.of(shape(bands.verdict())),
                    bands.verdict().word()),
            String.join(BETWEEN, BandWords.remarks(bands)),
            Optional.empty(),
            bands.grounds()));
  }

  private static Verdict shape(BandVerdict verdict) {
    return switch (verdict) {
      case POSITIVE -> Verdict.ABOVE;
      case NEGATIVE -> Verdict.WITHIN;
      case BORDERLINE -> Verdict.BORDERLINE;
      case UNDETERMINED -> Verdict.UNDETERMINED;
    };
  }

  /** The kinds of cells, which have no limit here. */
  private Stream<Result> cells() {
    return Stream.of(
            Analyte.LYMPHOCYTES,
            Analyte.MONOCYTES,
            Analyte.NEUTROPHILS,
            Analyte.EOSINOPHILS,
            Analyte.PLASMA_CELLS)
        .flatMap(kind -> said.panel().panel().find(Sample.csf(kind)).stream())
        .map(ResultRows::cells);
  }

  private static Result cells(Measurement share) {
    return new Result(
        FindingGroup.FLUID.heading(),
        share.sample().analyte().term(),
        new Amount(ValueWords.percent(share.value()), "% of cells", ""),
        new Judgement("", Optional.empty(), ""),
        "",
        Optional.empty(),
        Grounds.MEASURED);
  }

  /** What could not be computed, gathered under its reason. */
  Optional<String> withoutValue() {
    Map<String, String> termsByReason =
        said.findings().all().stream()
            .filter(f -> f.isAsked() && !f.hasValue())
            .collect(
                Collectors.groupingBy(
                    Finding::note,
                    LinkedHashMap::new,
                    Collectors.mapping(f -> f.code().term(), Collectors.joining(", "))));
    if (termsByReason.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        "Undetermined: "
            + termsByReason.entrySet().stream()
                .map(e -> "%s (%s)".formatted(e.getValue(), e.getKey()))
                .collect(Collectors.joining(BETWEEN))
            + ".");
  }

  /** What a work-up like this usually holds and this one does not. */
  List<String> notDone() {
    List<String> missing = new ArrayList<>();
    if (!said.bands().isReported()) {
      missing.add("oligoclonal bands");
    }
    Arrays.stream(Analyte.values())
        .filter(USUAL::contains)
        .filter(a -> !said.panel().panel().has(Sample.csf(a)))
        .map(Analyte::term)
        .forEach(missing::add);
    return missing;
  }
}
