package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.NumberRange;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Ratio;
import cistern.exchange.ucum.UnitTrouble;
import cistern.measurement.Measurement;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads person, draws, results and context of a work-up. */
final class PanelReader {

  private static final String UNIT = "unit";

  private final Conversions conversions;

  PanelReader(Conversions conversions) {
    this.conversions = conversions;
  }

  Panel read(Fields workup) {
    Person person = workup.object("person").map(this::person).orElse(Person.UNKNOWN);
    Optional<Fields> drawn = workup.object("draws");
    Draw csf = DrawReader.read(drawn.flatMap(d -> d.object("csf")));
    Draw serum = DrawReader.read(drawn.flatMap(d -> d.object("serum")));
    drawn.ifPresent(Fields::checkNoOthers);
    List<Measurement> measurements = new ResultsReader(conversions).read(workup.objects("results"));
    ContextReader.Context context = ContextReader.read(workup.object("context"));
    return Panel.of(person, measurements)
        .withDraws(csf, serum)
        .withCircumstances(context.answers())
        .withTimes(context.times());
  }

  private Person person(Fields person) {
    OptionalDouble days = person.number("ageDays", NumberRange.NOT_NEGATIVE);
    OptionalDouble years = person.number("ageYears", NumberRange.NOT_NEGATIVE);
    Person read =
        new Person(
            person.text("id"),
            days.isPresent() ? OptionalDouble.of(days.getAsDouble() / Person.DAYS_IN_YEAR) : years,
            new Person.Infant(days, person.answer("preterm"), person.answer("intensiveCare")),
            person.text("sex"),
            new Person.Body(
                person.number("weightKg", NumberRange.POSITIVE),
                person.object("creatinine").flatMap(this::creatinine)));
    person.keep("name", "birthDate");
    person.checkNoOthers();
    return read;
  }

  private Optional<Person.Creatinine> creatinine(Fields fields) {
    fields.checkGiven("value", UNIT);
    Optional<BigDecimal> value = fields.decimal("value", NumberRange.POSITIVE);
    Optional<String> unit = fields.text(UNIT);
    Optional<OffsetDateTime> at = fields.time("at");
    fields.checkNoOthers();
    Optional<Ratio> ratio =
        unit.flatMap(
            text ->
                UnitTrouble.check(
                    conversions.conversion(text, "umol/L", "creatinine"),
                    fields,
                    UNIT,
                    "creatinine",
                    "umol/L"));
    return value.isPresent() && ratio.isPresent()
        ? Optional.of(new Person.Creatinine(ratio.get().toDouble(value.get()), at))
        : Optional.empty();
  }
}
