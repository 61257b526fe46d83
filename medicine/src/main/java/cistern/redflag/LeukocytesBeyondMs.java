package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * More leukocytes than the largest published series of MS has seen.
 *
 * @param amount with its unit
 * @param grounds what it rests on
 */
record LeukocytesBeyondMs(String amount, Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    OptionalDouble value = input.leukocytes();
    return value.isPresent()
            && value.getAsDouble() > input.threshold("flag.leukocytes-beyond-ms.over")
        ? Optional.of(
            new LeukocytesBeyondMs(
                input.leukocytes(value.getAsDouble()),
                input.facts().grounds("flag.leukocytes-beyond-ms.over")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "leukocytes-beyond-ms";
  }

  @Override
  public String finding() {
    return "leukocytes";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(
        Disease.INFECTION,
        Disease.NEUROSARCOIDOSIS,
        Disease.NMOSD,
        Disease.MOGAD,
        Disease.LYMPHOMA);
  }

  @Override
  public String text() {
    return "%s: more than the largest published series of MS has seen.".formatted(amount);
  }
}
