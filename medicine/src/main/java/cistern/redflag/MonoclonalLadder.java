package cistern.redflag;

import cistern.bands.BandPattern;
import cistern.differential.Disease;
import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;

/**
 * A monoclonal ladder (pattern 5).
 *
 * @param grounds what it rests on
 */
record MonoclonalLadder(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    boolean isPattern =
        input.puncture().bands().pattern().filter(p -> p == BandPattern.LADDER).isPresent();
    return isPattern && input.isReadingUsable()
        ? Optional.of(new MonoclonalLadder(input.facts().grounds("flag.monoclonal-ladder")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "monoclonal-ladder";
  }

  @Override
  public String finding() {
    return "bands";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(Disease.PARAPROTEINAEMIA);
  }

  @Override
  public String text() {
    return "A monoclonal ladder in both lanes: serum immunofixation.";
  }
}
