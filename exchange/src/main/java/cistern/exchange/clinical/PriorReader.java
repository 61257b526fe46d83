package cistern.exchange.clinical;

import cistern.differential.Prior;
import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.NumberRange;
import cistern.measurement.Answer;
import java.util.List;
import java.util.Optional;

/** Reads how likely MS was before the puncture: a range, and whether it uses the imaging. */
final class PriorReader {

  private static final String PRIOR = "prior";
  private static final String MS = "ms";
  private static final int ENDS = 2;

  private PriorReader() {}

  static Optional<Prior> read(Fields evidence) {
    Optional<Fields> given = evidence.object(PRIOR);
    Optional<Prior> prior = given.flatMap(PriorReader::prior);
    given.ifPresent(Fields::checkNoOthers);
    return prior;
  }

  private static Optional<Prior> prior(Fields fields) {
    Answer usesMri = fields.answer("usesMri");
    if (!fields.isGiven(MS)) {
      return Optional.empty();
    }
    List<Double> ends = fields.numbers(MS, NumberRange.NOT_NEGATIVE);
    if (!fields.problems().isValid()) {
      return Optional.empty();
    }
    if (ends.size() != ENDS || ends.getLast() > 1 || ends.getFirst() > ends.getLast()) {
      fields.add(
          MS, InputTrouble.ILL_FORMED, "two probabilities between 0 and 1, the lower one first");
      return Optional.empty();
    }
    return Optional.of(new Prior(ends.getFirst(), ends.getLast(), usesMri));
  }
}
