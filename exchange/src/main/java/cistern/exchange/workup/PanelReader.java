package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.Sign;
import cistern.exchange.ucum.Conversions;
import cistern.measurement.Answer;
import cistern.measurement.Measurement;
import cistern.panel.Circumstance;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads person, draws, results and context of a work-up. */
final class PanelReader {

  private final Conversions conversions;

  PanelReader(Conversions conversions) {
    this.conversions = conversions;
  }

  Panel read(Fields workup) {
    Person person = workup.object("person").map(PanelReader::person).orElse(Person.UNKNOWN);
    Optional<Fields> drawn = workup.object("draws");
    Draw csf = DrawReader.read(drawn.flatMap(d -> d.object("csf")));
    Draw serum = DrawReader.read(drawn.flatMap(d -> d.object("serum")));
    drawn.ifPresent(Fields::checkNoOthers);
    List<Measurement> measurements = new ResultsReader(conversions).read(workup.objects("results"));
    Map<Circumstance, Answer> context = ContextReader.read(workup.object("context"));
    return Panel.of(person, measurements).withDraws(csf, serum).withCircumstances(context);
  }

  private static Person person(Fields person) {
    Person read =
        new Person(
            person.text("id"), person.number("ageYears", Sign.NOT_NEGATIVE), person.text("sex"));
    person.checkNoOthers();
    return read;
  }
}
