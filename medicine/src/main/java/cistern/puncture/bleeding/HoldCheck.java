package cistern.puncture.bleeding;

import cistern.finding.Printed;
import cistern.measurement.Answer;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * What one row answers to one person, and why.
 *
 * @param verdict the answer
 * @param reason in words
 */
record HoldCheck(HoldVerdict verdict, String reason) {

  static HoldCheck of(HoldRule rule, Circumstances circumstances) {
    if (rule.conditions().stream()
        .anyMatch(c -> c.isAlternative() && c.check(circumstances).isYes())) {
      return new HoldCheck(HoldVerdict.PASSED, "by the measured value: " + alternatives(rule));
    }
    return switch (rule.hold()) {
      case Hold.NoInterval none -> new HoldCheck(HoldVerdict.PASSED, "it asks for no interval");
      case Hold.Avoid avoid ->
          new HoldCheck(
              HoldVerdict.NOT_PASSED,
              "it advises against lumbar puncture on this drug; ask the prescriber");
      case Hold.UntilLevel level -> level(rule, circumstances);
      case Hold.RestartOnly restart ->
          new HoldCheck(HoldVerdict.ASK, "it speaks only of restarting; ask the prescriber");
      case Hold.NotRead notRead ->
          new HoldCheck(HoldVerdict.ASK, "no confirmed interval is held here: ask the prescriber");
      case Hold.MoreThan more -> moreThan(more.hours(), rule, circumstances);
      case Hold.Wait wait -> waiting(wait.hours(), rule, circumstances);
    };
  }

  private static HoldCheck level(HoldRule rule, Circumstances circumstances) {
    boolean isKnown =
        rule.conditions().stream()
            .anyMatch(c -> c.isAlternative() && c.check(circumstances).isKnown());
    String which = alternatives(rule);
    String wanted =
        "it gives no interval, a measured level decides" + (which.isEmpty() ? "" : ": " + which);
    return isKnown
        ? new HoldCheck(HoldVerdict.NOT_PASSED, wanted + ", not reached")
        : new HoldCheck(HoldVerdict.ASK, wanted + ", not measured; ask the prescriber");
  }

  private static HoldCheck moreThan(double limit, HoldRule rule, Circumstances circumstances) {
    OptionalDouble hours = circumstances.hours();
    if (hours.isEmpty() || hours.getAsDouble() < 0) {
      return unknownTime();
    }
    return hours.getAsDouble() > limit
        ? conditions(rule, circumstances, "more than " + hoursText(limit) + " have passed")
        : new HoldCheck(HoldVerdict.NOT_PASSED, "not more than " + hoursText(limit) + since(hours));
  }

  private static HoldCheck waiting(Hours wanted, HoldRule rule, Circumstances circumstances) {
    OptionalDouble hours = circumstances.hours();
    if (hours.isEmpty() || hours.getAsDouble() < 0) {
      return unknownTime();
    }
    double given = hours.getAsDouble();
    if (given < wanted.least()) {
      String unless = alternatives(rule);
      return new HoldCheck(
          HoldVerdict.NOT_PASSED,
          "under "
              + hoursText(wanted.least())
              + since(hours)
              + (unless.isEmpty() ? "" : "; or " + unless));
    }
    if (given < wanted.most()) {
      return new HoldCheck(
          HoldVerdict.ASK,
          "inside its range of " + wanted.toText() + since(hours) + "; ask the prescriber");
    }
    return conditions(rule, circumstances, wanted.toText() + " have passed");
  }

  private static HoldCheck conditions(HoldRule rule, Circumstances circumstances, String soFar) {
    List<Condition> needed = rule.conditions().stream().filter(c -> !c.isAlternative()).toList();
    for (Answer verdict : List.of(Answer.NO, Answer.UNKNOWN)) {
      String which =
          needed.stream()
              .filter(c -> c.check(circumstances) == verdict)
              .map(Condition::toText)
              .collect(Collectors.joining(", "));
      if (!which.isEmpty()) {
        return verdict == Answer.NO
            ? new HoldCheck(HoldVerdict.NOT_PASSED, soFar + ", but not " + which)
            : new HoldCheck(
                HoldVerdict.ASK, soFar + "; " + which + " is not known; ask the prescriber");
      }
    }
    String met = needed.stream().map(Condition::toText).collect(Collectors.joining(", "));
    return new HoldCheck(HoldVerdict.PASSED, met.isEmpty() ? soFar : soFar + ", and " + met);
  }

  private static HoldCheck unknownTime() {
    return new HoldCheck(
        HoldVerdict.ASK,
        "the time from the last dose to the puncture is not known; ask the prescriber");
  }

  private static String alternatives(HoldRule rule) {
    return rule.conditions().stream()
        .filter(Condition::isAlternative)
        .map(Condition::toText)
        .collect(Collectors.joining(" or "));
  }

  private static String since(OptionalDouble hours) {
    return " (" + hoursText(hours.orElseThrow()) + " since the last dose)";
  }

  private static String hoursText(double hours) {
    return Printed.decimals(hours, hours == Math.rint(hours) ? 0 : 1) + " h";
  }
}
