package cistern.puncture.headache;

import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.Subject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The risk of headache: odds of a baseline times odds ratios, p = o/(1 + o). The least and the most
 * over every completion of what is unknown; of an earlier puncture headache and a headache disorder
 * only the larger counts.
 */
public final class HeadacheRisks {

  private static final String KEY = "headache-risk.";
  private static final String ODDS_RATIO = ".odds-ratio";

  private final Facts facts;

  private HeadacheRisks(Facts facts) {
    this.facts = facts;
  }

  /** The baselines and odds ratios under some facts. */
  public static HeadacheRisks of(Facts facts) {
    return new HeadacheRisks(facts);
  }

  /** The band for a person and a planned needle. */
  public HeadacheRisk check(Before before, Subject subject) {
    Known known = new Known(before, subject);
    List<HeadacheRisk.Baseline> baselines =
        tips(before.needle().tip()).stream().map(this::baseline).toList();
    double low = 1;
    double high = 0;
    for (Needle.Tip tip : tips(before.needle().tip())) {
      double odds = odds(facts.number(KEY + "baseline." + tip.code()));
      low = Math.min(low, risk(odds * least(known, tip)));
      high = Math.max(high, risk(odds * most(known, tip)));
    }
    List<RiskFactor> factors = factors(known, before.needle().tip());
    Grounds grounds =
        factors.stream()
            .filter(f -> f.oddsRatio().isPresent())
            .map(RiskFactor::grounds)
            .reduce(facts.grounds(KEY + "label"), Grounds::and);
    return new HeadacheRisk(low, high, baselines, factors, facts.word(KEY + "label"), grounds);
  }

  /** Odds of a probability under 1. */
  static double odds(double probability) {
    return probability / (1 - probability);
  }

  /** Probability of odds. */
  static double risk(double odds) {
    return 1 / (1 + 1 / odds);
  }

  private double least(Known known, Needle.Tip tip) {
    return simple(known, tip).stream().mapToDouble(Range::least).reduce(1, (a, b) -> a * b)
        * history(known).least();
  }

  private double most(Known known, Needle.Tip tip) {
    return simple(known, tip).stream().mapToDouble(Range::most).reduce(1, (a, b) -> a * b)
        * history(known).most();
  }

  private List<Range> simple(Known known, Needle.Tip tip) {
    Answer stylet = tip == Needle.Tip.ATRAUMATIC ? known.stylet() : Answer.NO;
    Answer bevel = tip == Needle.Tip.CUTTING ? known.bevel() : Answer.NO;
    return List.of(
        range(known.female(), ratio("female")),
        range(middleAge(known), ratio("age-31-to-50")),
        range(stylet, ratio("stylet-replaced")),
        range(bevel, ratio("bevel-across")));
  }

  /** The larger of the two, over every completion of what is unknown. */
  private Range history(Known known) {
    double previous = ratio("previous-headache");
    double disorder = ratio("headache-disorder");
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (boolean had : completions(known.previous())) {
      for (boolean has : completions(known.disorder())) {
        double larger = Math.max(had ? previous : 1, has ? disorder : 1);
        least = Math.min(least, larger);
        most = Math.max(most, larger);
      }
    }
    return new Range(least, most);
  }

  private static List<Boolean> completions(Answer answer) {
    return switch (answer) {
      case YES -> List.of(true);
      case NO -> List.of(false);
      case UNKNOWN -> List.of(false, true);
    };
  }

  private static Range range(Answer present, double ratio) {
    return switch (present) {
      case YES -> new Range(ratio, ratio);
      case NO -> new Range(1, 1);
      case UNKNOWN -> new Range(Math.min(1, ratio), Math.max(1, ratio));
    };
  }

  private Answer middleAge(Known known) {
    OptionalDouble age = known.subject().ageYears();
    if (age.isEmpty()) {
      return Answer.UNKNOWN;
    }
    return age.getAsDouble() >= facts.number(KEY + "age-31-to-50.from")
            && age.getAsDouble() < facts.number(KEY + "age-31-to-50.below")
        ? Answer.YES
        : Answer.NO;
  }

  private double ratio(String factor) {
    return facts.number(KEY + factor + ODDS_RATIO);
  }

  private static List<Needle.Tip> tips(Needle.Tip planned) {
    return switch (planned) {
      case ATRAUMATIC -> List.of(Needle.Tip.ATRAUMATIC);
      case CUTTING -> List.of(Needle.Tip.CUTTING);
      case UNKNOWN -> List.of(Needle.Tip.ATRAUMATIC, Needle.Tip.CUTTING);
    };
  }

  private HeadacheRisk.Baseline baseline(Needle.Tip tip) {
    String key = KEY + "baseline." + tip.code();
    return new HeadacheRisk.Baseline(tip.code(), facts.number(key), facts.grounds(key));
  }

  private List<RiskFactor> factors(Known known, Needle.Tip tip) {
    List<RiskFactor> all = new ArrayList<>();
    all.add(counted("female", "female, not pregnant", known.female()));
    all.add(counted("age-31-to-50", "age 31 to 50", middleAge(known)));
    all.add(counted("previous-headache", "headache after an earlier puncture", known.previous()));
    all.add(
        known.previous().isYes()
            ? covered("headache-disorder", "a headache disorder", "covered by the larger factor")
            : counted("headache-disorder", "a headache disorder", known.disorder()));
    all.add(
        tip == Needle.Tip.CUTTING
            ? covered("stylet-replaced", "stylet put back", "studied with atraumatic needles only")
            : counted("stylet-replaced", "stylet put back", known.stylet()));
    all.add(
        tip == Needle.Tip.ATRAUMATIC
            ? covered("bevel-across", "bevel across the fibres", "cutting needles only")
            : counted("bevel-across", "bevel across the fibres", known.bevel()));
    facts.all().stream()
        .map(Fact::key)
        .filter(key -> key.startsWith(KEY + "unused."))
        .forEach(key -> all.add(advisory(key)));
    return all;
  }

  private RiskFactor counted(String code, String term, Answer answer) {
    Fact fact = facts.fact(KEY + code + ODDS_RATIO);
    RiskFactor.State state =
        switch (answer) {
          case YES -> RiskFactor.State.PRESENT;
          case NO -> RiskFactor.State.NOT_PRESENT;
          case UNKNOWN -> RiskFactor.State.UNKNOWN;
        };
    OptionalDouble ratio =
        answer == Answer.NO ? OptionalDouble.empty() : OptionalDouble.of(ratio(code));
    return new RiskFactor(code, term, state, ratio, fact.place(), Grounds.of(fact));
  }

  private RiskFactor covered(String code, String term, String why) {
    return new RiskFactor(
        code,
        term,
        RiskFactor.State.NOT_APPLICABLE,
        OptionalDouble.empty(),
        why,
        facts.grounds(KEY + code + ODDS_RATIO));
  }

  private RiskFactor advisory(String key) {
    String code = key.substring((KEY + "unused.").length());
    return new RiskFactor(
        code,
        code.replace('-', ' '),
        RiskFactor.State.ADVISORY,
        OptionalDouble.empty(),
        facts.word(key),
        facts.grounds(key));
  }

  private record Range(double least, double most) {}

  /**
   * What is known of the factors.
   *
   * @param before what was asked
   * @param subject the person
   */
  private record Known(Before before, Subject subject) {

    Answer female() {
      return subject.pregnancy().isYes() ? Answer.NO : subject.female();
    }

    Answer previous() {
      return before.answers().answer(Question.PREVIOUS_PUNCTURE_HEADACHE);
    }

    /** As asked for the procedure, else as known from elsewhere in the work-up. */
    Answer disorder() {
      Answer asked = before.answers().answer(Question.HEADACHE_DISORDER);
      return Arrays.asList(asked, subject.headacheDisorder()).stream()
          .filter(Answer::isKnown)
          .findFirst()
          .orElse(Answer.UNKNOWN);
    }

    Answer stylet() {
      return before.answers().answer(Question.STYLET_REPLACED);
    }

    Answer bevel() {
      return before.answers().answer(Question.BEVEL_ACROSS);
    }
  }
}
