package cistern.puncture.headache;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.ThreeValued;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The risk of headache: the published shares that fit the needle, or one local share with at most
 * one factor of the person, centred on the people it was counted in: logit p = logit p₀ + ln OR·(x
 * − x̄). Crude odds ratios of different studies are never multiplied, and the band is cut at the
 * extremes that were ever observed.
 */
public final class HeadacheRisks {

  private static final String KEY = "headache-risk.";
  private static final String FACTOR = KEY + "factor.";

  private final Facts facts;

  private HeadacheRisks(Facts facts) {
    this.facts = facts;
  }

  /** The shares and factors under some facts. */
  public static HeadacheRisks of(Facts facts) {
    return new HeadacheRisks(facts);
  }

  /** The band for a person and a planned needle. */
  public HeadacheRisk check(Before before, PuncturedPerson person) {
    Map<String, Answer> known = factors(before, person);
    Optional<HeadacheRisk.Share> local = local(before.needle().tip());
    Optional<String> counted = local.flatMap(l -> counted(known));
    List<HeadacheRisk.Share> figures =
        local.map(List::of).orElseGet(() -> published(before.needle(), person));
    List<Double> shares =
        counted.isPresent()
            ? centred(
                local.orElseThrow().share(),
                counted.get(),
                known.getOrDefault(counted.get(), Answer.UNKNOWN))
            : figures.stream().map(HeadacheRisk.Share::share).toList();
    double low = shares.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    double high = shares.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    return new HeadacheRisk(
        within(low),
        within(high),
        figures,
        listed(known, counted, before.needle().tip()),
        facts.word(KEY + "label"),
        figures.stream()
            .map(HeadacheRisk.Share::grounds)
            .reduce(facts.grounds(KEY + "label"), Grounds::and));
  }

  private double within(double share) {
    return Math.clamp(share, facts.number(KEY + "least"), facts.number(KEY + "most"));
  }

  private Optional<HeadacheRisk.Share> local(Needle.Tip tip) {
    String key = KEY + "local." + tip.code();
    return number(key).stream()
        .mapToObj(share -> new HeadacheRisk.Share("the clinic's own", share, facts.grounds(key)))
        .findFirst();
  }

  /**
   * Trials by tip; where gauge and sex are in the joint table and the tip may be cutting, that too.
   */
  private List<HeadacheRisk.Share> published(Needle needle, PuncturedPerson person) {
    List<HeadacheRisk.Share> all = new ArrayList<>();
    for (Needle.Tip tip : Needle.Tip.values()) {
      boolean isMeant = needle.tip() == Needle.Tip.UNKNOWN || needle.tip() == tip;
      if (isMeant && tip != Needle.Tip.UNKNOWN) {
        all.add(share(KEY + "trials." + tip.code(), tip.code() + " needle, all trials"));
        all.add(share(KEY + "neurology." + tip.code(), tip.code() + " needle, a neurology trial"));
      }
    }
    String joint =
        KEY + "joint." + needle.gauge().orElse(0) + "." + person.sex().orElse("not stated");
    if (needle.tip() != Needle.Tip.ATRAUMATIC && facts.find(joint).isPresent()) {
      String who = person.female().isYes() ? "women" : "men";
      all.add(share(joint, who + ", " + needle.gauge().getAsInt() + "G, kind of tip not stated"));
    }
    return all;
  }

  private HeadacheRisk.Share share(String key, String text) {
    return new HeadacheRisk.Share(text, facts.number(key), facts.grounds(key));
  }

  private Map<String, Answer> factors(Before before, PuncturedPerson person) {
    Map<String, Answer> all = new LinkedHashMap<>();
    all.put("previous-headache", before.answers().answer(Question.PREVIOUS_PUNCTURE_HEADACHE));
    Answer asked = before.answers().answer(Question.HEADACHE_DISORDER);
    all.put("headache-disorder", asked.isKnown() ? asked : person.headacheDisorder());
    all.put("female", person.pregnancy().isYes() ? Answer.NO : person.female());
    all.put(
        "age-31-to-50",
        ThreeValued.when(
            person.ageYears(),
            age ->
                age >= facts.number(KEY + "age-31-to-50.from")
                    && age < facts.number(KEY + "age-31-to-50.below")));
    return all;
  }

  /** The first factor that is known and whose share among the local people is known. */
  private Optional<String> counted(Map<String, Answer> known) {
    return known.keySet().stream()
        .filter(code -> number(FACTOR + code + ".share").isPresent())
        .findFirst();
  }

  /** One share for each completion of the factor. */
  private List<Double> centred(double base, String code, Answer present) {
    double mean = number(FACTOR + code + ".share").orElseThrow();
    double slope = Math.log(facts.number(FACTOR + code + ".odds-ratio"));
    List<Double> values =
        switch (present) {
          case YES -> List.of(1.0);
          case NO -> List.of(0.0);
          case UNKNOWN -> List.of(0.0, 1.0);
        };
    return values.stream()
        .map(x -> Math.log(base / (1 - base)) + slope * (x - mean))
        .map(logit -> 1 / (1 + Math.exp(-logit)))
        .toList();
  }

  private List<HeadacheRisk.Factor> listed(
      Map<String, Answer> known, Optional<String> counted, Needle.Tip tip) {
    List<HeadacheRisk.Factor> all = new ArrayList<>();
    all.add(
        factor(
            "tip",
            "kind of needle: " + tip.code(),
            true,
            "chooses the figures; atraumatic RR "
                + facts.fact(KEY + "atraumatic.risk-ratio").value().toText(),
            KEY + "atraumatic.risk-ratio"));
    known.forEach(
        (code, answer) ->
            all.add(
                factor(
                    code,
                    code.replace('-', ' ') + ": " + answer.word(),
                    counted.filter(code::equals).isPresent(),
                    counted.filter(code::equals).isPresent()
                        ? "centred on its share among the clinic's own people"
                        : "its share in a baseline is not known, or another factor counts",
                    FACTOR + code + ".odds-ratio")));
    facts
        .keys(KEY + "unused.")
        .forEach(
            key -> {
              String code = key.substring((KEY + "unused.").length());
              all.add(factor(code, code, false, facts.word(key), key));
            });
    return all;
  }

  private HeadacheRisk.Factor factor(
      String code, String term, boolean isCounted, String note, String key) {
    return new HeadacheRisk.Factor(
        code,
        term,
        isCounted ? HeadacheRisk.State.COUNTED : HeadacheRisk.State.NOT_COUNTED,
        note,
        facts.grounds(key));
  }

  private OptionalDouble number(String key) {
    return facts.fact(key).value() instanceof FactValue.Figure figure
        ? OptionalDouble.of(figure.value())
        : OptionalDouble.empty();
  }
}
