package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.Sign;
import cistern.measurement.Answer;
import cistern.measurement.Measurement;
import cistern.panel.Circumstance;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads person, draws, results and context of a work-up. */
final class PanelReader {

  private final ResultsReader results;

  PanelReader(ResultsReader results) {
    this.results = results;
  }

  Panel read(Fields workup) {
    Person person = workup.object("person").map(PanelReader::person).orElse(Person.UNKNOWN);
    Optional<Fields> draws = workup.object("draws");
    Draw csf = draws.flatMap(d -> d.object("csf")).map(PanelReader::draw).orElse(Draw.UNKNOWN);
    Draw serum = draws.flatMap(d -> d.object("serum")).map(PanelReader::draw).orElse(Draw.UNKNOWN);
    draws.ifPresent(Fields::checkNoOthers);
    List<Measurement> measurements = results.read(workup);
    Map<Circumstance, Answer> context =
        workup.object("context").map(PanelReader::context).orElse(Map.of());
    return Panel.of(person, measurements).withDraws(csf, serum).withCircumstances(context);
  }

  private static Person person(Fields person) {
    Person read =
        new Person(
            person.text("id"), person.number("ageYears", Sign.NOT_NEGATIVE), person.text("sex"));
    person.checkNoOthers();
    return read;
  }

  private static Draw draw(Fields draw) {
    Draw read =
        new Draw(
            draw.time("at"),
            draw.time("receivedAt"),
            draw.text("appearance"),
            draw.text("site"),
            draw.number("volumeMl", Sign.NOT_NEGATIVE));
    draw.keep("portionMl", "openingPressure");
    draw.checkNoOthers();
    return read;
  }

  private static Map<Circumstance, Answer> context(Fields context) {
    Map<Circumstance, Answer> answers = new EnumMap<>(Circumstance.class);
    for (Circumstance circumstance : Circumstance.values()) {
      if (context.isGiven(circumstance.code())) {
        answers.put(circumstance, context.answer(circumstance.code()));
      }
    }
    context.time("at");
    context.checkNoOthers();
    return answers;
  }
}
