package cistern.report.page;

import cistern.fact.Grounds;
import cistern.finding.UnitProfile;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Analyte.Family;
import cistern.measurement.CanonicalUnit;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import cistern.report.paper.Paper.Amount;
import cistern.report.paper.Paper.Judgement;
import cistern.report.paper.Paper.Result;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Table;
import cistern.report.wording.ValueWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What was measured, as it went into the quotients: fluid beside serum or blood. */
final class MeasuredValues {

  private static final double MILLI = 1000;
  private static final String NONE = "–";

  private final Panel panel;
  private final UnitProfile units;

  MeasuredValues(Interpretation said) {
    this.panel = said.panel().panel();
    this.units = said.puncture().units();
  }

  /** Everything that was measured, a row an analyte; empty where nothing was. */
  Optional<Table> toTable() {
    List<Analyte> measured = Arrays.stream(Analyte.values()).filter(this::isMeasured).toList();
    boolean isMethodStated = measured.stream().anyMatch(a -> !methods(a).isEmpty());
    List<String> head = new ArrayList<>(List.of("Analyte", "CSF", "Serum or blood"));
    if (isMethodStated) {
      head.add("Method");
    }
    List<Row> rows = new ArrayList<>();
    for (Analyte analyte : measured) {
      List<String> cells = new ArrayList<>(List.of(analyte.term()));
      cells.add(text(analyte, Compartment.CSF).orElse(NONE));
      cells.add(
          text(analyte, Compartment.SERUM).or(() -> text(analyte, Compartment.BLOOD)).orElse(NONE));
      if (isMethodStated) {
        cells.add(methods(analyte));
      }
      rows.add(Row.of(cells.toArray(String[]::new)));
    }
    return rows.isEmpty() ? Optional.empty() : Optional.of(new Table("", head, rows));
  }

  private Stream<Measurement> found(Analyte analyte) {
    return Arrays.stream(Compartment.values())
        .flatMap(in -> panel.find(new Sample(analyte, in)).stream());
  }

  private boolean isMeasured(Analyte analyte) {
    return found(analyte).findAny().isPresent();
  }

  private String methods(Analyte analyte) {
    return found(analyte)
        .flatMap(m -> m.assay().stream())
        .distinct()
        .collect(Collectors.joining(", "));
  }

  /** The two fluids of an analyte as one row of a letter; none where neither was measured. */
  Stream<Result> pair(Analyte analyte) {
    List<String> fluids = new ArrayList<>();
    List<String> values = new ArrayList<>();
    for (Compartment in : List.of(Compartment.CSF, Compartment.SERUM)) {
      text(analyte, in)
          .ifPresent(
              value -> {
                fluids.add(in == Compartment.CSF ? "CSF" : in.code());
                values.add(value);
              });
    }
    return values.isEmpty()
        ? Stream.empty()
        : Stream.of(
            new Result(
                "",
                analyte.term() + " " + String.join(", ", fluids),
                new Amount(String.join(", ", values), "", ""),
                new Judgement("", Optional.empty(), ""),
                "",
                Optional.empty(),
                Grounds.MEASURED));
  }

  private Optional<String> text(Analyte analyte, Compartment in) {
    return panel.find(new Sample(analyte, in)).map(m -> text(m.sample(), m.value()));
  }

  /**
   * In the unit that was chosen for it; else in the medicine's, and in serum from a gram on in
   * grams.
   */
  private String text(Sample sample, Interval value) {
    return units
        .find(sample)
        .map(unit -> ValueWords.reported(value, unit) + " " + unit.text())
        .orElseGet(() -> usual(sample, value));
  }

  private static String usual(Sample sample, Interval value) {
    Analyte analyte = sample.analyte();
    if (analyte.family() == Family.FRACTION) {
      return ValueWords.percent(value) + " %";
    }
    boolean isMuch = sample.in() != Compartment.CSF && value.lower() >= MILLI;
    if (isMuch && analyte.unit() == CanonicalUnit.MG_PER_L) {
      return ValueWords.reported(
              new Interval(value.lower() / MILLI, value.upper() / MILLI, value.censored()))
          + " g/L";
    }
    String unit =
        switch (analyte.unit()) {
          case PER_UL -> "/µL";
          case ARBITRARY -> "of the laboratory's units";
          case MG_PER_L, MMOL_PER_L, NG_PER_ML, NG_PER_L, ONE, MG_PER_DAY -> analyte.unit().ucum();
        };
    return ValueWords.reported(value) + " " + unit;
  }
}
