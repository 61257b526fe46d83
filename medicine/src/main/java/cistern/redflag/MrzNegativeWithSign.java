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

  static Optional<RedFlag> check(Seen seen) {
    if (seen.findings().verdict(FindingCode.MRZ_REACTION) != Verdict.WITHIN) {
      return Optional.empty();
    }
    return sign(seen)
        .map(s -> new MrzNegativeWithSign(s, seen.facts().grounds("flag.mrz-negative")));
  }

  private static Optional<String> sign(Seen seen) {
    if (isOver(seen.leukocytes(), seen, "flag.leukocytes-raised.over")) {
      return Optional.of("raised leukocytes");
    }
    OptionalDouble albumin = seen.least(FindingCode.ALBUMIN_QUOTIENT);
    if (isOver(albumin, seen, "flag.albumin-quotient-high.over")) {
      return Optional.of("a high albumin quotient");
    }
    return seen.bands() == Answer.NO
        ? Optional.of("no demonstrated CSF-only bands")
        : Optional.empty();
  }

  private static boolean isOver(OptionalDouble value, Seen seen, String key) {
    return value.isPresent() && value.getAsDouble() > seen.threshold(key);
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
