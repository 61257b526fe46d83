package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads what a laboratory's report held beside the work-up, so that it is named again. */
final class LeftOverReader {

  private LeftOverReader() {}

  static void read(Fields workup) {
    workup.objects(LeftOver.FIELD).forEach(LeftOverReader::entry);
  }

  private static void entry(Fields fields) {
    String place = fields.text("place").orElse("");
    String what = fields.text("what").orElse("");
    Optional<Why> why = fields.text("why").flatMap(Why::parse);
    if (why.isEmpty()) {
      fields.add("why", InputTrouble.ILL_FORMED, "one of the reasons in docs/guide/exchange.md");
    }
    Stream.of("value", "unit").forEach(fields::text);
    fields.checkNoOthers();
    why.ifPresent(
        reason -> fields.problems().add(new NotUsed(fields.place().path(), place, what, reason)));
  }
}
