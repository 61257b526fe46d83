package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A negative MRZ reaction together with another sign against MS.
 *
 * @param sign the other sign, in words
 * @param grounds what it rests on
 */
record MrzNegativeWithSign(String sign, Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    if (input.puncture().findings().verdict(FindingCode.MRZ_REACTION) != Verdict.WITHIN) {
      return Optional.empty();
    }
    return sign(input)
        .map(s -> new MrzNegativeWithSign(s, input.facts().grounds("flag.mrz-negative")));
  }

  private static Optional<String> sign(FlagInput input) {
    if (isOver(input.leukocytes(), input, "flag.leukocytes-raised.over")) {
      return Optional.of("raised leukocytes");
    }
    OptionalDouble albumin = input.least(FindingCode.ALBUMIN_QUOTIENT);
    if (isOver(albumin, input, "flag.albumin-quotient-high.over")) {
      return Optional.of("a high albumin quotient");
    }
    return input.bands() == Answer.NO
        ? Optional.of("no demonstrated CSF-only bands")
        : Optional.empty();
  }

  private static boolean isOver(OptionalDouble value, FlagInput input, String key) {
    return value.isPresent() && value.getAsDouble() > input.threshold(key);
  }

  @Override
  public String code() {
    return "mrz-negative-with-sign";
  }

  @Override
  public String finding() {
    return "mrz-reaction";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(Disease.NEUROSARCOIDOSIS);
  }

  @Override
  public String text() {
    return "The MRZ reaction is negative beside %s: together they favour neurosarcoidosis over relapsing"
            .formatted(sign)
        + " MS.";
  }
}
