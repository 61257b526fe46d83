package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.measurement.Answer;
import java.util.List;
import java.util.Optional;

/**
 * No CSF-only bands demonstrated in a usable reading.
 *
 * @param grounds what it rests on
 */
record NoCsfOnlyBands(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    return input.bands() == Answer.NO
        ? Optional.of(new NoCsfOnlyBands(input.facts().grounds("flag.no-csf-only-bands")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "no-csf-only-bands";
  }

  @Override
  public String finding() {
    return "bands";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(
        Disease.MOGAD,
        Disease.NMOSD,
        Disease.NEUROSARCOIDOSIS,
        Disease.NEURO_BEHCET,
        Disease.SUSAC,
        Disease.VASCULAR);
  }

  @Override
  public String text() {
    return "No CSF-only bands were demonstrated: bands are missing in a minority of MS, so think of"
        + " what mimics it, too.";
  }
}
