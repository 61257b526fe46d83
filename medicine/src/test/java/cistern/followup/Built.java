package cistern.followup;

import cistern.analysis.Puncture;
import cistern.bands.BandCounts;
import cistern.bands.BandReport;
import cistern.fact.Facts;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** An invented puncture, built one field at a time, and what a comparison says of several. */
final class Built {

  static final Facts FACTS = Facts.standard();
  static final OffsetDateTime FIRST = OffsetDateTime.parse("2031-03-02T10:00:00Z");

  private final String id;
  private final List<Measurement> results = new ArrayList<>();
  Optional<String> person = Optional.of("p-1");
  Optional<OffsetDateTime> at;
  Optional<String> site = Optional.of("lumbar");
  double serumHours = 1;
  Map<Circumstance, Answer> circumstances = Map.of();
  BandReport bands = new BandReport.NotReported();

  Built(String id, int days) {
    this.id = id;
    at = Optional.of(FIRST.plusDays(days));
  }

  Built with(Sample sample, double value) {
    return with(sample, Interval.of(value), Optional.of("nephelometry"));
  }

  Built with(Sample sample, Interval value, Optional<String> assay) {
    results.removeIf(m -> m.sample().equals(sample));
    results.add(
        new Measurement(sample, value, OptionalDouble.empty(), assay, Optional.empty(), "results"));
    return this;
  }

  Built panel(double csfAlbumin, double csfIgg) {
    return with(Sample.csf(Analyte.ALBUMIN), csfAlbumin)
        .with(Sample.serum(Analyte.ALBUMIN), 42_000)
        .with(Sample.csf(Analyte.IGG), csfIgg)
        .with(Sample.serum(Analyte.IGG), 11_000);
  }

  Built bands(int csfOnly, String method) {
    bands =
        new BandReport.Counted(
            BandCounts.of(csfOnly, 0, 0),
            Optional.empty(),
            new BandReport.Origin(Optional.of(method), Optional.empty()),
            Optional.empty());
    return this;
  }

  Puncture puncture() {
    Draw csf = new Draw(at, Optional.empty(), Optional.empty(), site, OptionalDouble.empty());
    Draw serum =
        at.map(t -> Draw.at(t.plusMinutes(Math.round(serumHours * 60)))).orElse(Draw.UNKNOWN);
    Panel panel =
        Panel.of(new Person(person, OptionalDouble.of(34), Optional.empty()), results)
            .withDraws(csf, serum)
            .withCircumstances(circumstances);
    Workup workup = new Workup(id, panel, bands, List.of());
    return Interpreter.of(FACTS).interpret(workup).puncture();
  }

  static Built built(String id, int days) {
    return new Built(id, days).panel(220, 62);
  }

  static Comparison compare(Built... built) {
    return Comparisons.of(FACTS).compare(List.of(built).stream().map(Built::puncture).toList());
  }

  static Change change(Comparison comparison, String code) {
    return comparison.steps().getFirst().changes().stream()
        .filter(c -> c.code().equals(code))
        .findFirst()
        .orElseThrow();
  }

  static String remarks(Comparison comparison) {
    return comparison.remarks().toString();
  }
}
