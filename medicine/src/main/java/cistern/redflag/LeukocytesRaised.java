package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * More leukocytes than is usual in MS, though still within what has been seen.
 *
 * @param amount with its unit
 * @param grounds what it rests on
 */
record LeukocytesRaised(String amount, Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    OptionalDouble value = input.leukocytes();
    String from = "flag.leukocytes-raised.over";
    return value.isPresent()
            && value.getAsDouble() > input.threshold(from)
            && value.getAsDouble() <= input.threshold("flag.leukocytes-beyond-ms.over")
        ? Optional.of(
            new LeukocytesRaised(
                input.leukocytes(value.getAsDouble()), input.facts().grounds(from)))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "leukocytes-raised";
  }

  @Override
  public String finding() {
    return "leukocytes";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(Disease.NEUROSARCOIDOSIS, Disease.MOGAD, Disease.NMOSD, Disease.INFECTION);
  }

  @Override
  public String text() {
    return "%s: so many are uncommon in MS.".formatted(amount);
  }
}
