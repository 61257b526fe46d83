package cistern.puncture.headache;

import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.measurement.Answer;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.RedFlag;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Headache after a puncture: every red flag first, then definition, next step, what else. */
public final class HeadacheAssessments {

  private static final String FROM = "headache.patch.from-hours";
  private static final String UNTIL = "headache.patch.to-hours";

  private final Facts facts;

  private HeadacheAssessments(Facts facts) {
    this.facts = facts;
  }

  /** The questions and definitions under some facts. */
  public static HeadacheAssessments of(Facts facts) {
    return new HeadacheAssessments(facts);
  }

  /** What a person reports; without a report every question is open. */
  public HeadacheAssessment check(After after, Optional<OffsetDateTime> punctureAt) {
    HeadacheRecord headache = after.headache().orElse(HeadacheRecord.UNKNOWN);
    HeadacheTimes times = HeadacheTimes.of(headache, punctureAt, after.asOf());
    List<RedFlagAnswer> flags =
        Arrays.stream(RedFlag.Danger.values()).map(d -> flags(d, headache)).toList();
    boolean isChanged =
        flags.stream().anyMatch(f -> f.danger() == RedFlag.Danger.PATTERN && f.isPresent());
    return new HeadacheAssessment(
        flags,
        conclusion(flags),
        new Definitions(facts).check(headache, times),
        headache.present() == Answer.NO ? List.of() : steps(times),
        isChanged ? facts.word("headache.other") : "");
  }

  private RedFlagAnswer flags(RedFlag.Danger danger, HeadacheRecord headache) {
    String key = "red-flag." + danger.code();
    List<RedFlagAnswer.Asked> asked =
        Arrays.stream(RedFlag.values())
            .filter(f -> f.danger() == danger)
            .map(f -> new RedFlagAnswer.Asked(f, headache.answer(f)))
            .toList();
    return new RedFlagAnswer(
        danger,
        facts.word(key + ".think-of"),
        facts.word(key + ".urgency"),
        asked,
        facts.grounds(key + ".think-of", key + ".urgency"));
  }

  private String conclusion(List<RedFlagAnswer> flags) {
    Optional<RedFlagAnswer> first = flags.stream().filter(RedFlagAnswer::isPresent).findFirst();
    long open = flags.stream().mapToLong(f -> f.with(Answer.UNKNOWN).size()).sum();
    String still =
        open == 0
            ? ""
            : " " + open + (open == 1 ? " question is" : " questions are") + " still open: ask.";
    if (first.isPresent()) {
      return capital(first.get().urgency()) + ". Think of " + first.get().thinkOf() + "." + still;
    }
    return open == 0
        ? facts.word("red-flag.none")
        : "Not settled: an unanswered red-flag question counts as open." + still;
  }

  private List<Step> steps(HeadacheTimes times) {
    return List.of(
        step("comfort", ""),
        step("caffeine", ""),
        new Step(
            "blood-patch",
            String.join(
                " ",
                facts.word("headache.patch.effect"),
                facts.word("headache.patch.early"),
                facts.word("headache.patch.late"),
                facts.word("headache.patch.second"),
                facts.word("headache.patch.before"),
                "Local policy and the doctor who does it decide."),
            window(times.hoursSoFar()),
            facts.grounds("headache.patch.effect", FROM, UNTIL)),
        new Step(
            "follow-up",
            facts.word("headache.follow-up"),
            "",
            facts.grounds("headache.follow-up")));
  }

  private Step step(String code, String window) {
    String key = "headache.step." + code;
    return new Step(code, facts.word(key), window, facts.grounds(key));
  }

  /** How the time stands to the window of the published trial. */
  private String window(OptionalDouble hours) {
    double from = facts.number(FROM);
    double until = facts.number(UNTIL);
    String published =
        "the trial's window is " + whole(from) + "–" + whole(until) + " h from onset";
    if (hours.isEmpty()) {
      return published + "; the hours since onset are not known";
    }
    double given = hours.getAsDouble();
    String where = given < from ? "before it" : given <= until ? "inside it" : "after it";
    return published + "; now " + whole(given) + " h, " + where;
  }

  private static String whole(double value) {
    return Printed.decimals(value, 0);
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
  }
}
