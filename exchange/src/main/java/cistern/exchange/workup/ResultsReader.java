package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Sign;
import cistern.exchange.ucum.Conversions;
import cistern.measurement.Analyte;
import cistern.measurement.CanonicalUnit;
import cistern.measurement.Compartment;
import cistern.measurement.Measurement;
import cistern.measurement.ReportedValue;
import cistern.measurement.Sample;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads the results of a work-up into canonical units. */
final class ResultsReader {

  private static final List<String> VALUES = List.of("value", "below", "above");

  private final ResultUnits units;

  ResultsReader(Conversions conversions) {
    units = new ResultUnits(conversions);
  }

  /** The results that can be read; every reason why another cannot is noted. */
  List<Measurement> read(Fields workup) {
    Map<Sample, RawResult> bySample = new LinkedHashMap<>();
    for (Fields result : workup.objects("results")) {
      raw(result).ifPresent(r -> keepFirst(bySample, r));
    }
    List<Measurement> read = new ArrayList<>();
    for (RawResult raw : bySample.values()) {
      units
          .factor(raw, counterpart(bySample, raw))
          .flatMap(ratio -> raw.measurement(ratio))
          .ifPresent(read::add);
    }
    return read;
  }

  private static void keepFirst(Map<Sample, RawResult> bySample, RawResult result) {
    RawResult first = bySample.putIfAbsent(result.sample(), result);
    if (first != null) {
      result
          .fields()
          .problems()
          .add(result.fields().place(), InputTrouble.RESULT_TWICE, first.fields().place().path());
    }
  }

  private static Optional<RawResult> counterpart(Map<Sample, RawResult> all, RawResult raw) {
    boolean isArbitrary = raw.sample().analyte().unit() == CanonicalUnit.ARBITRARY;
    Sample other = new Sample(raw.sample().analyte(), raw.sample().in().counterpart());
    return isArbitrary ? Optional.ofNullable(all.get(other)) : Optional.empty();
  }

  private static Optional<RawResult> raw(Fields result) {
    result.checkGiven("analyte", "in", "unit");
    Optional<String> name = result.text("analyte");
    Optional<Analyte> analyte = name.flatMap(Analyte::parse);
    if (name.isPresent() && analyte.isEmpty()) {
      result.problems().add(new UnknownAnalyte(result.place("analyte").path()));
    }
    Optional<Compartment> in = result.word("in", Compartment::parse, fluids());
    Optional<String> unit = result.text("unit");
    Optional<Value> value = value(result);
    Details details = details(result);
    result.checkNoOthers();
    if (analyte.isEmpty() || in.isEmpty() || unit.isEmpty() || value.isEmpty()) {
      return Optional.empty();
    }
    Sample sample = new Sample(analyte.get(), in.get());
    return Optional.of(new RawResult(result, sample, value.get(), unit.get(), details));
  }

  private static List<String> fluids() {
    return Stream.of(Compartment.values()).map(Compartment::code).toList();
  }

  private static Details details(Fields result) {
    result.keep("status", "reportedLimit", "originalCode", "originalText");
    return new Details(
        result.number("cv", Sign.NOT_NEGATIVE), result.text("assay"), result.time("at"));
  }

  /** Exactly one of value, below and above; nothing lies below zero. */
  private static Optional<Value> value(Fields result) {
    List<String> given = VALUES.stream().filter(result::isGiven).toList();
    if (given.size() != 1) {
      String count = given.isEmpty() ? "none" : String.join(" and ", given);
      result.problems().add(result.place(), InputTrouble.NOT_ONE_VALUE, count);
      VALUES.forEach(name -> result.decimal(name, Sign.NOT_NEGATIVE));
      return Optional.empty();
    }
    String name = given.getFirst();
    result.keep(VALUES.toArray(String[]::new));
    Sign sign = name.equals("below") ? Sign.POSITIVE : Sign.NOT_NEGATIVE;
    return result.decimal(name, sign).map(number -> new Value(name, number));
  }

  /**
   * A value as written.
   *
   * @param name value, below or above
   * @param number in the unit beside it
   */
  record Value(String name, BigDecimal number) {

    /** The value in the canonical unit. */
    ReportedValue in(double canonical) {
      return switch (name) {
        case "below" -> new ReportedValue.Below(canonical);
        case "above" -> new ReportedValue.Above(canonical);
        default -> new ReportedValue.Exact(canonical);
      };
    }
  }
}
