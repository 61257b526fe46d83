package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Total protein far above its limit.
 *
 * @param amount with its unit
 * @param grounds what it rests on
 */
record ProteinHigh(String amount, Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    OptionalDouble value = input.least(FindingCode.TOTAL_PROTEIN);
    return value.isPresent() && value.getAsDouble() > input.threshold("flag.protein-high.over")
        ? Optional.of(
            new ProteinHigh(
                input.amount(value.getAsDouble(), FindingCode.TOTAL_PROTEIN),
                input.facts().grounds("flag.protein-high.over")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "protein-high";
  }

  @Override
  public String finding() {
    return "total-protein";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(
        Disease.NEUROSARCOIDOSIS,
        Disease.SUSAC,
        Disease.INFECTION,
        Disease.POLYRADICULONEUROPATHY,
        Disease.SPINAL_BLOCK);
  }

  @Override
  public String text() {
    return "Total protein %s: so much is unusual in MS.".formatted(amount);
  }
}
