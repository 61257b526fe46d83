package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import java.util.List;
import java.util.Optional;

/**
 * Lactate above its limit.
 *
 * @param grounds what it rests on
 */
record LactateHigh(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    return input.puncture().findings().get(FindingCode.LACTATE).isAbove()
        ? Optional.of(new LactateHigh(input.facts().grounds("flag.lactate-high")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "lactate-high";
  }

  @Override
  public String finding() {
    return "lactate";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(
        Disease.BACTERIAL_INFECTION, Disease.LEPTOMENINGEAL_TUMOUR, Disease.NEUROSARCOIDOSIS);
  }

  @Override
  public String text() {
    return "Lactate is raised: not a finding of MS.";
  }
}
