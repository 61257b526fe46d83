package cistern.redflag;

import cistern.differential.Disease;
import cistern.differential.Serology;
import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;

/**
 * Antibodies against aquaporin-4 in serum.
 *
 * @param grounds what it rests on
 */
record Aqp4Antibody(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    return input.serology().stream().anyMatch(s -> s.isPositive(Serology.AQP4_IGG))
        ? Optional.of(new Aqp4Antibody(input.facts().grounds("flag.aqp4-antibody")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "aqp4-antibody";
  }

  @Override
  public String finding() {
    return "aqp4-igg";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(Disease.NMOSD);
  }

  @Override
  public String text() {
    return "Aquaporin-4 antibodies are positive in serum: another diagnosis than MS is likely.";
  }
}
