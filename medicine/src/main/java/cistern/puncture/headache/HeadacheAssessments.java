package cistern.puncture.headache;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.WarningSign;
import cistern.urgent.Urgency;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Headache after a puncture: every red flag first, then definition, next step, what else. */
public final class HeadacheAssessments {

  private final Facts facts;

  private HeadacheAssessments(Facts facts) {
    this.facts = facts;
  }

  /** The questions and definitions under some facts. */
  public static HeadacheAssessments of(Facts facts) {
    return new HeadacheAssessments(facts);
  }

  /**
   * What a person reports; without a report every question is open.
   *
   * @param holding the emergencies and red flags that hold, most urgent first
   */
  public HeadacheAssessment check(
      After after, Optional<OffsetDateTime> punctureAt, List<Urgency> holding) {
    HeadacheRecord headache = after.headache().orElse(HeadacheRecord.UNKNOWN);
    HeadacheTimes times = HeadacheTimes.of(headache, punctureAt, after.asOf());
    List<RedFlagAnswer> flags =
        Arrays.stream(WarningSign.Danger.values()).map(d -> flags(d, headache)).toList();
    return new HeadacheAssessment(
        flags, conclusion(flags, holding), new Definitions(facts).check(headache, times));
  }

  private RedFlagAnswer flags(WarningSign.Danger danger, HeadacheRecord headache) {
    String key = "red-flag." + danger.code();
    List<RedFlagAnswer.Asked> asked =
        Arrays.stream(WarningSign.values())
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

  private String conclusion(List<RedFlagAnswer> flags, List<Urgency> holding) {
    long open = flags.stream().mapToLong(f -> f.with(Answer.UNKNOWN).size()).sum();
    String still =
        open == 0
            ? ""
            : " " + open + (open == 1 ? " question is" : " questions are") + " still open: ask.";
    if (!holding.isEmpty()) {
      return holding.stream()
              .map(u -> u.words().say())
              .collect(java.util.stream.Collectors.joining(" "))
          + still;
    }
    return open == 0
        ? facts.word("red-flag.none")
        : "Not settled: an unanswered red-flag question counts as open." + still;
  }
}
