package cistern.exchange.intake;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.JsonText;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.workup.WorkupReading;
import cistern.exchange.workup.WorkupReading.NotValid;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** What an intake makes of an input. */
final class Read {

  private static final Facts FACTS = Facts.standard();

  private final List<WorkupReading> readings = new ArrayList<>();

  private Read() {}

  static Read of(String text) {
    return of(text.getBytes(StandardCharsets.UTF_8), LocalMapping.NONE);
  }

  static Read of(byte[] bytes, LocalMapping mapping) {
    Read read = new Read();
    Intake.of(FACTS, mapping).read(new ByteArrayInputStream(bytes), read.readings::add);
    return read;
  }

  int count() {
    return readings.size();
  }

  Understood workup(int index) {
    return (Understood) readings.get(index);
  }

  Understood workup() {
    return workup(readings.size() - 1);
  }

  String document() {
    return JsonText.of(workup().document());
  }

  /** Samples with values in canonical units, in order. */
  List<String> values() {
    return values(workup());
  }

  static List<String> values(Understood understood) {
    return understood.workup().panel().results().values().stream().map(Read::value).toList();
  }

  private static String value(Measurement measurement) {
    Interval value = measurement.value();
    String bound = Double.isInfinite(value.upper()) ? ">" : "<";
    String number =
        value.isExact()
            ? Double.toString(value.exactly())
            : bound + (bound.equals(">") ? value.lower() : value.upper());
    return measurement.sample().code() + " " + number;
  }

  List<String> problems() {
    return workup().workup().problems().stream().map(Problem::code).toList();
  }

  /** Key and place of every reason why something was refused. */
  List<String> refusals() {
    return readings.stream()
        .filter(NotValid.class::isInstance)
        .flatMap(r -> ((NotValid) r).problems().stream())
        .map(Read::refusal)
        .toList();
  }

  private static String refusal(InputProblem problem) {
    return problem.key() + " at " + problem.place() + ": " + problem.text();
  }
}
