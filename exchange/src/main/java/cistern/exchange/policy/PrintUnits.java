package cistern.exchange.policy;

import cistern.exchange.json.Fields;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Spellings;
import cistern.exchange.ucum.UnitTrouble;
import cistern.fact.FactValue;
import cistern.fact.UnitKey;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.Optional;

/**
 * The units in which a policy has results written: UCUM, or a spelling of the trade, of a kind that
 * the analyte is measured in.
 */
final class PrintUnits {

  private static final String VALUE = "value";
  private static final FactValue AS_TYPED = new FactValue.Word("as-typed");

  private final Conversions conversions;
  private final Spellings spellings;

  private PrintUnits(Conversions conversions) {
    this.conversions = conversions;
    this.spellings = Spellings.of(conversions);
  }

  static PrintUnits of(Conversions conversions) {
    return new PrintUnits(conversions);
  }

  /** The unit that stands at a key; empty, with a problem noted, when it can be none. */
  Optional<FactValue> read(UnitKey key, Fields given) {
    Optional<String> typed = given.text(VALUE);
    Optional<Analyte> analyte = Sample.parse(key.sample()).map(Sample::analyte);
    if (typed.isEmpty() || analyte.isEmpty()) {
      return Optional.empty();
    }
    return typed.get().equals(AS_TYPED.toText())
        ? Optional.of(AS_TYPED)
        : unit(typed.get(), analyte.get(), given);
  }

  private Optional<FactValue> unit(String typed, Analyte analyte, Fields given) {
    String ucum = spellings.ucum(typed, analyte).orElse(typed);
    Optional<FactValue.Unit> unit = conversions.written(typed, ucum, analyte);
    if (unit.isEmpty()) {
      UnitTrouble.check(
          conversions.conversion(ucum, analyte),
          given,
          VALUE,
          analyte.term(),
          analyte.unit().ucum());
    }
    return unit.map(u -> u);
  }
}
