package cistern.puncture.aftercare;

import static cistern.puncture.procedure.ThreeValued.all;
import static cistern.puncture.procedure.ThreeValued.any;
import static cistern.puncture.procedure.ThreeValued.not;
import static cistern.puncture.procedure.ThreeValued.when;
import static cistern.puncture.procedure.WarningSign.BLADDER_OR_BOWEL;
import static cistern.puncture.procedure.WarningSign.DOUBLE_VISION;
import static cistern.puncture.procedure.WarningSign.DROWSINESS;
import static cistern.puncture.procedure.WarningSign.FACIAL_PALSY;
import static cistern.puncture.procedure.WarningSign.FEVER;
import static cistern.puncture.procedure.WarningSign.FOCAL_DEFICIT;
import static cistern.puncture.procedure.WarningSign.HEARING_LOSS;
import static cistern.puncture.procedure.WarningSign.LEAK;
import static cistern.puncture.procedure.WarningSign.LEG_WEAKNESS;
import static cistern.puncture.procedure.WarningSign.LONG_LASTING;
import static cistern.puncture.procedure.WarningSign.NECK_STIFFNESS;
import static cistern.puncture.procedure.WarningSign.NOT_EASING_LYING;
import static cistern.puncture.procedure.WarningSign.NO_LONGER_POSTURAL;
import static cistern.puncture.procedure.WarningSign.PUS;
import static cistern.puncture.procedure.WarningSign.RASH;
import static cistern.puncture.procedure.WarningSign.REDUCED_CONSCIOUSNESS;
import static cistern.puncture.procedure.WarningSign.ROOT_PAIN;
import static cistern.puncture.procedure.WarningSign.SADDLE_NUMBNESS;
import static cistern.puncture.procedure.WarningSign.SEIZURE;
import static cistern.puncture.procedure.WarningSign.SEVERE_BACK_PAIN;
import static cistern.puncture.procedure.WarningSign.THUNDERCLAP;
import static cistern.puncture.procedure.WarningSign.VISUAL_LOSS;
import static cistern.puncture.procedure.WarningSign.WORSENING;

import cistern.bedside.RuleReply;
import cistern.bedside.Sign;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.WarningSign;
import cistern.urgent.Tier;
import cistern.urgent.Urgency;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Emergencies and red flags after a puncture, in the order in which they are asked; any yes comes
 * before advice on headache. A rule with a missing answer is unknown, never no.
 */
final class AfterCareRules {

  /** The only row beside which something may be said of treatment. */
  static final String SEVERE = "severe-headache";

  private static final String KEY = "after-care.";

  private final Facts facts;
  private final List<Rule> rules;

  AfterCareRules(Facts facts) {
    this.facts = facts;
    rules =
        List.of(
            new Rule("spinal-emergency", this::spinal),
            new Rule("fever-after-puncture", AfterCareRules::fever),
            new Rule("new-deficit", AfterCareRules::deficit),
            new Rule("pressure-and-pregnancy", this::pressure),
            new Rule("headache-changed", this::changed),
            new Rule("ask-about-change", this::askAboutChange),
            new Rule("cranial-nerve", c -> anyOf(c, DOUBLE_VISION, HEARING_LOSS, FACIAL_PALSY)),
            new Rule("leak-or-pus", c -> anyOf(c, LEAK, PUS)),
            new Rule("root-pain", this::rootPain),
            new Rule(SEVERE, this::severe));
  }

  /**
   * One row.
   *
   * @param code the name in files
   * @param trigger when it holds
   */
  private record Rule(String code, Function<Complaint, Answer> trigger) {}

  /** What holds; of the first tier also what is unknown, when something else is urgent. */
  List<Urgency> check(Complaint complaint) {
    if (complaint.procedure().after().headache().isEmpty()) {
      return List.of();
    }
    List<Urgency> holding = new ArrayList<>();
    List<Urgency> unknown = new ArrayList<>();
    for (Rule rule : rules) {
      switch (rule.trigger.apply(complaint)) {
        case YES -> holding.add(urgency(rule.code, Urgency.State.HOLDS, complaint));
        case UNKNOWN -> unknown.add(urgency(rule.code, Urgency.State.UNKNOWN, complaint));
        case NO -> {}
      }
    }
    boolean isUrgent =
        Stream.concat(holding.stream(), complaint.person().beside().fluid().holding().stream())
            .anyMatch(u -> u.tier() != Tier.T2);
    boolean isNamed = isUrgent || isPartly(complaint);
    return Stream.concat(
            holding.stream(), unknown.stream().filter(u -> isNamed && u.tier() == Tier.T0))
        .sorted(Comparator.comparing(Urgency::tier))
        .toList();
  }

  /** Whether a rule of the first tier holds. */
  Answer emergency(Complaint complaint) {
    return any(
        rules.stream()
            .filter(r -> isFirstTier(r.code))
            .map(r -> r.trigger.apply(complaint))
            .toArray(Answer[]::new));
  }

  /** Whether any other red flag holds, a severe headache left out. */
  Answer flag(Complaint complaint) {
    return any(
        rules.stream()
            .filter(r -> !isFirstTier(r.code) && !r.code.equals(SEVERE))
            .map(r -> r.trigger.apply(complaint))
            .toArray(Answer[]::new));
  }

  private boolean isFirstTier(String code) {
    return Tier.valueOf(facts.word(KEY + code + ".tier")) == Tier.T0;
  }

  /** Fever alone, while nobody said whether the head aches. */
  private static boolean isPartly(Complaint c) {
    return c.sign(FEVER).isYes();
  }

  private Urgency urgency(String code, Urgency.State state, Complaint complaint) {
    String key = KEY + code;
    Optional<RuleReply> reply =
        complaint.person().beside().bedside().replies().stream()
            .filter(r -> r.to().equals(code) && r.isComplete())
            .findFirst();
    return new Urgency(
        code,
        Tier.valueOf(facts.word(key + ".tier")),
        state,
        false,
        new Urgency.Words(
            facts.word(key + ".say"),
            facts.word(key + ".act"),
            state == Urgency.State.UNKNOWN ? List.of("an answer") : List.of()),
        findings(code, complaint),
        reply,
        facts.grounds(key + ".say"));
  }

  private static List<String> findings(String code, Complaint c) {
    List<WarningSign> signs =
        switch (code) {
          case "spinal-emergency" ->
              List.of(LEG_WEAKNESS, SADDLE_NUMBNESS, BLADDER_OR_BOWEL, SEVERE_BACK_PAIN);
          case "fever-after-puncture" ->
              List.of(FEVER, NECK_STIFFNESS, DROWSINESS, RASH, REDUCED_CONSCIOUSNESS);
          case "new-deficit" ->
              List.of(
                  SEIZURE,
                  REDUCED_CONSCIOUSNESS,
                  DROWSINESS,
                  FOCAL_DEFICIT,
                  VISUAL_LOSS,
                  THUNDERCLAP);
          case "pressure-and-pregnancy" -> List.of(VISUAL_LOSS, SEIZURE);
          case "headache-changed" ->
              List.of(NO_LONGER_POSTURAL, NOT_EASING_LYING, WORSENING, LONG_LASTING);
          case "cranial-nerve" -> List.of(DOUBLE_VISION, HEARING_LOSS, FACIAL_PALSY);
          case "leak-or-pus" -> List.of(LEAK, PUS);
          case "root-pain" -> List.of(ROOT_PAIN, SEVERE_BACK_PAIN);
          default -> List.of();
        };
    return signs.stream().filter(s -> c.sign(s).isYes()).map(WarningSign::field).toList();
  }

  private static Answer anyOf(Complaint c, WarningSign... signs) {
    return any(Stream.of(signs).map(c::sign).toArray(Answer[]::new));
  }

  private Answer spinal(Complaint c) {
    Answer bleeding =
        any(
            c.drugs().antithrombotic(),
            c.plateletsUnder(facts.number(KEY + "platelets-below")),
            c.sign(FEVER));
    return any(
        anyOf(c, LEG_WEAKNESS, SADDLE_NUMBNESS, BLADDER_OR_BOWEL),
        all(c.sign(SEVERE_BACK_PAIN), bleeding));
  }

  private static Answer fever(Complaint c) {
    return all(
        c.sign(FEVER),
        any(anyOf(c, NECK_STIFFNESS, DROWSINESS, RASH, REDUCED_CONSCIOUSNESS), c.present()));
  }

  /** Drowsiness speaks for the brain unless a fever explains it. */
  private static Answer deficit(Complaint c) {
    Answer drowsy =
        c.sign(DROWSINESS).isYes() && !c.sign(FEVER).isYes()
            ? Answer.YES
            : all(c.sign(DROWSINESS), not(c.sign(FEVER)));
    return any(
        anyOf(c, SEIZURE, REDUCED_CONSCIOUSNESS, FOCAL_DEFICIT, VISUAL_LOSS),
        drowsy,
        when(c.sign(THUNDERCLAP).isYes()));
  }

  private Answer pressure(Complaint c) {
    return all(
        anyOf(c, VISUAL_LOSS, SEIZURE),
        any(
            c.pressureFrom(facts),
            c.person().female() == Answer.NO ? Answer.NO : c.person().pregnancy(),
            when(c.asked(Question.POST_PARTUM).isYes())));
  }

  /** Lost posture counts while lying does not ease; once alone it is usual in this headache. */
  private Answer changed(Complaint c) {
    Answer lost = c.asked(Question.BETTER_LYING).isYes() ? Answer.NO : c.sign(NO_LONGER_POSTURAL);
    OptionalDouble days = c.times().daysSoFar();
    Answer isLong =
        days.isPresent() ? when(days, d -> d > facts.number(KEY + "long-days")) : Answer.NO;
    Answer isLate = any(when(c.firstDay(), d -> d >= facts.number(KEY + "late-day")));
    return any(
        lost,
        c.sign(NOT_EASING_LYING),
        c.sign(WORSENING),
        c.sign(LONG_LASTING),
        isLong,
        c.firstDay().isPresent() ? isLate : Answer.NO);
  }

  private Answer askAboutChange(Complaint c) {
    boolean isOpen = changed(c) == Answer.UNKNOWN && c.present().isYes();
    if (!isOpen) {
      return Answer.NO;
    }
    return any(
        c.drugs().anticoagulant(),
        when(c.person().ageYears(), v -> v >= facts.number(KEY + "age-from")),
        c.bedside(Sign.CANCER_HISTORY),
        c.before(Question.VENOUS_THROMBOEMBOLISM),
        c.asked(Question.HORMONES),
        c.asked(Question.DEHYDRATION),
        c.person().pregnancy());
  }

  private Answer rootPain(Complaint c) {
    return any(
        when(c.sign(ROOT_PAIN).isYes()),
        all(when(c.sign(SEVERE_BACK_PAIN).isYes()), not(when(spinal(c).isYes()))));
  }

  /** Severe, or moderate beyond two days, and no red flag that holds. */
  private Answer severe(Complaint c) {
    boolean isFlagged =
        rules.stream()
            .takeWhile(r -> !r.code.equals("root-pain"))
            .anyMatch(r -> r.trigger.apply(c).isYes());
    if (isFlagged) {
      return Answer.NO;
    }
    return any(
        when(c.severity(), v -> v >= facts.number(KEY + "severe-from")),
        all(
            when(c.severity(), v -> v >= facts.number(KEY + "moderate-from")),
            when(c.hours(), v -> v > facts.number(KEY + "moderate-hours"))));
  }
}
