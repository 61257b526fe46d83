package cistern.redflag;

import cistern.differential.Disease;
import cistern.differential.Serology;
import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;

/**
 * Antibodies against MOG in serum.
 *
 * @param grounds what it rests on
 */
record MogAntibody(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    double clear = input.facts().number("stop.mog.clear.titre.from");
    return input.serology().stream()
            .filter(s -> s.isPositive(Serology.MOG_IGG))
            .anyMatch(s -> !s.isUnder(clear))
        ? Optional.of(
            new MogAntibody(
                input.facts().grounds("flag.mog-antibody", "stop.mog.clear.titre.from")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "mog-antibody";
  }

  @Override
  public String finding() {
    return "mog-igg";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(Disease.MOGAD);
  }

  @Override
  public String text() {
    return "MOG antibodies are positive in serum: another diagnosis than MS is likely.";
  }
}
