package cistern.report.compare;

import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.finding.UnitProfile;
import cistern.finding.WrittenUnit;
import cistern.followup.Change;
import cistern.measurement.CanonicalUnit;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.report.wording.ValueWords;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;

/**
 * The cells of a row that compares one value at two punctures: its name with the one unit of the
 * row, and both numbers in it.
 *
 * @param change what became of the value
 * @param unit as it is printed; empty where the numbers stand alone
 * @param number writes a number in that unit, without it
 */
record ChangeWords(Change change, String unit, DoubleFunction<String> number) {

  private static final double MG_PER_G = 1000;

  static ChangeWords of(Change change, UnitProfile units) {
    return FindingCode.parse(change.code())
        .map(code -> of(change, code, units))
        .or(() -> Sample.parse(change.code()).map(sample -> of(change, sample, units)))
        .orElseGet(() -> new ChangeWords(change, "", Printed::significant));
  }

  private static ChangeWords of(Change change, FindingCode code, UnitProfile units) {
    return new ChangeWords(change, ValueWords.unit(code, units), held -> units.number(code, held));
  }

  private static ChangeWords of(Change change, Sample sample, UnitProfile units) {
    return units
        .find(sample)
        .map(unit -> new ChangeWords(change, unit.text(), number(unit)))
        .orElseGet(() -> usual(change, sample));
  }

  private static DoubleFunction<String> number(WrittenUnit unit) {
    return unit.isOfSameSize() ? Printed::significant : unit::number;
  }

  /** In the medicine's unit, and in serum from a gram on in grams. */
  private static ChangeWords usual(Change change, Sample sample) {
    CanonicalUnit held = sample.analyte().unit();
    boolean isMuch =
        sample.in() != Compartment.CSF
            && Stream.of(change.from(), change.to())
                .flatMap(Optional::stream)
                .allMatch(value -> value.lower() >= MG_PER_G);
    if (isMuch && held == CanonicalUnit.MG_PER_L) {
      return new ChangeWords(change, "g/L", mg -> Printed.significant(mg / MG_PER_G));
    }
    String unit =
        held == CanonicalUnit.ARBITRARY
            ? "the laboratory's units"
            : held.ucum().replace("/uL", "/µL");
    return new ChangeWords(change, unit, Printed::significant);
  }

  /** The name of the value with the unit of its row. */
  String name() {
    return unit.isEmpty() ? change.term() : change.term() + ", " + unit;
  }

  String from() {
    return text(change.from());
  }

  String to() {
    return text(change.to());
  }

  private String text(Optional<Interval> value) {
    return value
        .map(
            v ->
                v.isExact()
                    ? number.apply(v.exactly())
                    : "between " + number.apply(v.lower()) + " and " + number.apply(v.upper()))
        .orElse("not measured");
  }
}
