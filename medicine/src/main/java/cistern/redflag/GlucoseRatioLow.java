package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import java.util.List;
import java.util.Optional;

/**
 * A glucose ratio below its limit.
 *
 * @param grounds what it rests on
 */
record GlucoseRatioLow(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    return input.puncture().findings().verdict(FindingCode.GLUCOSE_RATIO) == Verdict.BELOW
        ? Optional.of(new GlucoseRatioLow(input.facts().grounds("flag.glucose-ratio-low")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "glucose-ratio-low";
  }

  @Override
  public String finding() {
    return "glucose-ratio";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(
        Disease.BACTERIAL_INFECTION, Disease.LEPTOMENINGEAL_TUMOUR, Disease.NEUROSARCOIDOSIS);
  }

  @Override
  public String text() {
    return "The glucose ratio is low: not a finding of MS.";
  }
}
