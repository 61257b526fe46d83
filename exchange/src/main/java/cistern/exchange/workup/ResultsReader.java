package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.NumberRange;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Ratio;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Measurement.Tube;
import cistern.measurement.Sample;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** The {@code results} of one work-up, in canonical units. */
final class ResultsReader {

  private static final Set<Analyte> COUNTED = EnumSet.of(Analyte.ERYTHROCYTES, Analyte.LEUKOCYTES);
  private static final List<String> FLUIDS =
      Stream.of(Compartment.values()).map(Compartment::code).toList();
  private static final String ANALYTE = "analyte";
  private static final String IN = "in";
  private static final String UNIT = "unit";

  private final UnitReader units;
  private final Map<String, String> placesBySample = new HashMap<>();

  ResultsReader(Conversions conversions) {
    this.units = new UnitReader(conversions);
  }

  /** The results that are understood; everything else is noted. */
  List<Measurement> read(List<Fields> results) {
    List<Measurement> measurements = new ArrayList<>();
    results.forEach(fields -> read(fields).ifPresent(measurements::add));
    return measurements;
  }

  private Optional<Measurement> read(Fields fields) {
    fields.checkGiven(ANALYTE, IN, UNIT);
    Optional<String> name = fields.text(ANALYTE);
    Optional<Compartment> in = fields.word(IN, Compartment::parse, FLUIDS);
    Optional<String> unit = fields.text(UNIT);
    Optional<Written> written = written(fields);
    OptionalDouble cv = fields.number("cv", NumberRange.NOT_NEGATIVE);
    Optional<String> assay = fields.text("assay");
    Optional<OffsetDateTime> at = fields.time("at");
    fields.keep("status", "reportedLimit", "originalCode", "originalText");
    Tube tube = tube(fields, name, in);
    fields.checkNoOthers();
    checkTwice(fields, name, in, tube);
    Optional<Analyte> analyte = analyte(fields, name);
    if (analyte.isEmpty() || unit.isEmpty()) {
      return Optional.empty();
    }
    Optional<Ratio> ratio = units.read(analyte.get(), unit.get(), fields);
    if (in.isEmpty() || written.isEmpty() || ratio.isEmpty()) {
      return Optional.empty();
    }
    Sample sample = new Sample(analyte.get(), in.get());
    return value(fields, written.get(), ratio.get(), sample)
        .map(value -> new Measurement(sample, value, cv, assay, at, tube, fields.place().path()));
  }

  private static Optional<Analyte> analyte(Fields fields, Optional<String> name) {
    Optional<Analyte> analyte = name.flatMap(Analyte::parse);
    if (name.isPresent() && analyte.isEmpty()) {
      fields.problems().add(new UnknownAnalyte(fields.place(ANALYTE).path(), name.get()));
    }
    return analyte;
  }

  /** Cells of the fluid may be counted twice, in the first tube and in the last. */
  private static Tube tube(Fields fields, Optional<String> name, Optional<Compartment> in) {
    if (!fields.isGiven("tube")) {
      return Tube.UNNAMED;
    }
    Optional<Tube> tube = fields.word("tube", ResultsReader::tube, List.of("first", "last"));
    boolean isCount =
        in.equals(Optional.of(Compartment.CSF))
            && name.flatMap(Analyte::parse).filter(COUNTED::contains).isPresent();
    return isCount ? tube.orElse(Tube.UNNAMED) : Tube.UNNAMED;
  }

  private static Optional<Tube> tube(String word) {
    return switch (word) {
      case "first" -> Optional.of(Tube.FIRST);
      case "last" -> Optional.of(Tube.LAST);
      default -> Optional.empty();
    };
  }

  private void checkTwice(
      Fields fields, Optional<String> name, Optional<Compartment> in, Tube tube) {
    if (name.isEmpty() || in.isEmpty()) {
      return;
    }
    String here = fields.place().path();
    String sample = in.get().code() + " " + name.get();
    for (Tube other : Tube.values()) {
      boolean isOfBoth = tube != other && tube != Tube.UNNAMED && other != Tube.UNNAMED;
      String first = isOfBoth ? null : placesBySample.get(sample + other);
      if (first != null) {
        fields.problems().add(fields.place(), InputTrouble.RESULT_TWICE, first);
        return;
      }
    }
    placesBySample.put(sample + tube, here);
  }

  /** Which of the three kinds of value a result has. */
  private enum Kind {
    VALUE("value", NumberRange.NOT_NEGATIVE),
    BELOW("below", NumberRange.POSITIVE),
    ABOVE("above", NumberRange.NOT_NEGATIVE);

    private final String field;
    private final NumberRange sign;

    Kind(String field, NumberRange sign) {
      this.field = field;
      this.sign = sign;
    }
  }

  /** The value of a result in the unit of the file. */
  private record Written(Kind kind, BigDecimal number) {}

  private static Optional<Written> written(Fields fields) {
    int given = 0;
    Optional<Written> written = Optional.empty();
    for (Kind kind : Kind.values()) {
      Optional<BigDecimal> number = fields.decimal(kind.field, kind.sign);
      given += fields.isGiven(kind.field) ? 1 : 0;
      written = number.isPresent() ? Optional.of(new Written(kind, number.get())) : written;
    }
    if (given != 1) {
      String count = given == 0 ? "none" : Integer.toString(given);
      fields.problems().add(fields.place(), InputTrouble.NOT_ONE_VALUE, count);
      return Optional.empty();
    }
    return written;
  }

  private static Optional<Interval> value(
      Fields fields, Written written, Ratio ratio, Sample sample) {
    double number = ratio.toDouble(written.number());
    String unit = sample.analyte().unit().ucum();
    if (number == 0 && written.number().signum() != 0) {
      fields.add(written.kind().field, InputTrouble.TOO_SMALL);
      return Optional.empty();
    }
    if (fields.bounded(written.kind().field, number, unit).isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        switch (written.kind()) {
          case VALUE -> Interval.of(number);
          case BELOW -> Interval.below(number);
          case ABOVE -> Interval.above(number);
        });
  }
}
