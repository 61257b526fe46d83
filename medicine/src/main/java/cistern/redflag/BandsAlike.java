package cistern.redflag;

import cistern.bands.BandPattern;
import cistern.differential.Disease;
import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;

/**
 * Bands alike in CSF and serum (pattern 4).
 *
 * @param grounds what it rests on
 */
record BandsAlike(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    boolean isPattern =
        input.puncture().bands().pattern().filter(p -> p == BandPattern.SYSTEMIC).isPresent();
    return isPattern && input.isReadingUsable()
        ? Optional.of(new BandsAlike(input.facts().grounds("flag.bands-alike")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "bands-alike";
  }

  @Override
  public String finding() {
    return "bands";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(
        Disease.SYSTEMIC_IMMUNE_ACTIVATION, Disease.VASCULAR, Disease.POLYRADICULONEUROPATHY);
  }

  @Override
  public String text() {
    return "The bands are alike in CSF and serum: often systemic. They lower the probability of MS"
        + " and do not rule it out.";
  }
}
