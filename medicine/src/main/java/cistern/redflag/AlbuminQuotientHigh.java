package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A barrier more disturbed than is usual in MS.
 *
 * @param quotient CSF over serum albumin
 * @param grounds what it rests on
 */
record AlbuminQuotientHigh(double quotient, Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    OptionalDouble value = input.least(FindingCode.ALBUMIN_QUOTIENT);
    return value.isPresent()
            && value.getAsDouble() > input.threshold("flag.albumin-quotient-high.over")
        ? Optional.of(
            new AlbuminQuotientHigh(
                value.getAsDouble(), input.facts().grounds("flag.albumin-quotient-high.over")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "albumin-quotient-high";
  }

  @Override
  public String finding() {
    return "albumin-quotient";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(
        Disease.NEUROSARCOIDOSIS,
        Disease.MOGAD,
        Disease.INFECTION,
        Disease.LEPTOMENINGEAL_TUMOUR,
        Disease.POLYRADICULONEUROPATHY);
  }

  @Override
  public String text() {
    return "Albumin quotient %s·10⁻³: so disturbed a barrier is unusual in MS."
        .formatted(Printed.of(FindingCode.ALBUMIN_QUOTIENT, quotient));
  }
}
