package cistern.puncture.specimen;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.PunctureQuestion;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.TestOrder;
import cistern.puncture.procedure.TubeTemplate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Which tubes, how much in each, and what goes first when the draw is short: the minimum of every
 * test by rank, passing over one that no longer fits, then what is left up to the wanted volumes.
 */
public final class TubePlans {

  private static final String KEY = "tubes.";

  private final Facts facts;

  private TubePlans(Facts facts) {
    this.facts = facts;
  }

  /** The volumes and orders under some facts. */
  public static TubePlans of(Facts facts) {
    return new TubePlans(facts);
  }

  /** The tubes for the tests ordered; for the question's usual tests when none are named. */
  public TubePlan check(TestOrder order, PuncturedPerson subject) {
    PunctureQuestion question = order.question().orElse(PunctureQuestion.MS);
    List<CsfTest> ranked =
        order.tests().isEmpty()
            ? tests("question." + question.code())
            : order.tests().stream().distinct().toList();
    OptionalDouble available =
        order.volumeMl().isPresent() ? order.volumeMl() : subject.draw().volumeMl();
    Map<CsfTest, Double> filled = fill(ranked, available);
    List<CsfTest> dropped = ranked.reversed().stream().filter(t -> !filled.containsKey(t)).toList();
    TubeTemplate template = order.template().orElseGet(this::usualTemplate);
    List<Tube> tubes = tubes(filled, template, available);
    return new TubePlan(
        question,
        template,
        tubes,
        ranked,
        dropped,
        volumes(tubes, ranked, available),
        List.of(facts.word(KEY + "note.mix"), facts.word(KEY + "note.first")),
        facts.word(KEY + "serum.window"),
        Arrays.stream(facts.word(KEY + "label").split(";", -1)).map(String::strip).toList(),
        facts.grounds(KEY + "template", KEY + "order." + template.code(), KEY + "total.usual"));
  }

  private TubeTemplate usualTemplate() {
    return TubeTemplate.parse(facts.word(KEY + "template")).orElse(TubeTemplate.CELLS_FIRST);
  }

  private List<CsfTest> tests(String key) {
    return Arrays.stream(facts.word(KEY + key).split(",", -1))
        .map(code -> CsfTest.parse(code).orElseThrow())
        .toList();
  }

  /** mL for each test that is reached. */
  private Map<CsfTest, Double> fill(List<CsfTest> ranked, OptionalDouble available) {
    Map<CsfTest, Double> filled = new LinkedHashMap<>();
    double left = available.orElse(Double.POSITIVE_INFINITY);
    for (CsfTest test : ranked) {
      double least = ml(test, "minimum", ranked);
      if (least <= left) {
        filled.put(test, least);
        left -= least;
      }
    }
    for (CsfTest test : ranked) {
      Double least = filled.get(test);
      if (least != null) {
        double more = Math.min(left, Math.max(0, ml(test, "wanted", ranked) - least));
        filled.put(test, least + more);
        left -= more;
      }
    }
    return filled;
  }

  /** The quotients share the tube of the bands; without bands they need what the bands need. */
  private double ml(CsfTest test, String amount, List<CsfTest> asked) {
    boolean isAlone = test == CsfTest.QUOTIENTS && !asked.contains(CsfTest.BANDS);
    return facts.number(KEY + (isAlone ? CsfTest.BANDS : test).code() + "." + amount);
  }

  private List<Tube> tubes(
      Map<CsfTest, Double> filled, TubeTemplate template, OptionalDouble available) {
    List<Tube> tubes = new ArrayList<>();
    boolean isShared = filled.containsKey(CsfTest.BANDS) && filled.containsKey(CsfTest.QUOTIENTS);
    for (CsfTest test : tests("order." + template.code())) {
      Double ml = filled.get(test);
      if (ml == null || (isShared && test == CsfTest.QUOTIENTS)) {
        continue;
      }
      List<CsfTest> both =
          isShared && test == CsfTest.BANDS
              ? List.of(CsfTest.BANDS, CsfTest.QUOTIENTS)
              : List.of(test);
      tubes.add(tube(tubes.size() + 1, ml, both));
    }
    double sum = sum(tubes);
    double spare = available.orElse(facts.number(KEY + "total.usual")) - sum;
    if (spare > 0) {
      tubes.add(reserve(tubes.size() + 1, spare));
    }
    return tubes;
  }

  private Tube tube(int order, double ml, List<CsfTest> tests) {
    CsfTest first = tests.getFirst();
    String key = KEY + first.code() + ".";
    return new Tube(
        order,
        ml,
        ml(first, "minimum", tests),
        tests,
        facts.word(key + "container"),
        facts.word(key + "limit"),
        facts.grounds(key + "minimum", key + "wanted", key + "limit"));
  }

  private Tube reserve(int order, double ml) {
    return new Tube(
        order,
        ml,
        0,
        List.of(),
        facts.word(KEY + "reserve.container"),
        facts.word(KEY + "reserve.limit"),
        facts.grounds(KEY + "total.lower", KEY + "total.usual"));
  }

  private TubePlan.Volumes volumes(
      List<Tube> tubes, List<CsfTest> ranked, OptionalDouble available) {
    double total = sum(tubes);
    double least = ranked.stream().mapToDouble(t -> ml(t, "minimum", ranked)).sum();
    return new TubePlan.Volumes(
        total,
        least,
        available.isPresent() ? Optional.of(available.getAsDouble()) : Optional.empty(),
        minutes(total));
  }

  /** Minutes until a volume, mL, is made again. */
  TubePlan.Minutes minutes(double ml) {
    return new TubePlan.Minutes(
        ml / facts.number(KEY + "production.upper"),
        ml / facts.number(KEY + "production.middle"),
        ml / facts.number(KEY + "production.lower"));
  }

  private static double sum(List<Tube> tubes) {
    return tubes.stream().mapToDouble(Tube::ml).sum();
  }

  /** What the production of the fluid rests on. */
  public Grounds production() {
    return facts.grounds(
        KEY + "production.lower", KEY + "production.middle", KEY + "production.upper");
  }
}
