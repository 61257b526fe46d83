package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.measurement.Analyte;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Eosinophils among raised leukocytes.
 *
 * @param share of the leukocytes, 0 to 1
 * @param grounds what it rests on
 */
record EosinophilsProminent(double share, Grounds grounds) implements RedFlag {

  private static final double PER_CENT = 100;

  static Optional<RedFlag> check(FlagInput input) {
    OptionalDouble share = input.cellShare(Analyte.EOSINOPHILS);
    boolean isRaised = input.puncture().findings().get(FindingCode.LEUKOCYTES).isAbove();
    return isRaised
            && share.isPresent()
            && share.getAsDouble() >= input.threshold("flag.eosinophils-prominent.from")
        ? Optional.of(
            new EosinophilsProminent(
                share.getAsDouble(), input.facts().grounds("flag.eosinophils-prominent.from")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "eosinophils-prominent";
  }

  @Override
  public String finding() {
    return "leukocytes";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(Disease.NMOSD, Disease.PARASITE, Disease.LYMPHOMA);
  }

  @Override
  public String text() {
    return "Eosinophils make up %s %% of the raised leukocytes: unusual in MS."
        .formatted(Printed.decimals(PER_CENT * share, 0));
  }
}
