package cistern.puncture.readiness;

import static cistern.puncture.procedure.Question.FAILED_ATTEMPT;
import static cistern.puncture.procedure.Question.LAMINECTOMY;
import static cistern.puncture.procedure.Question.LANDMARKS_NOT_FELT;
import static cistern.puncture.procedure.Question.LUMBAR_FUSION;
import static cistern.puncture.procedure.Question.OTHER_SPINE_SURGERY;
import static cistern.puncture.procedure.Question.SCOLIOSIS;
import static cistern.puncture.procedure.Question.SEVERE_ARTHRITIS;
import static cistern.puncture.procedure.Question.SPINE_ANOMALY;

import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.readiness.Guidance.Advice;
import cistern.puncture.readiness.Guidance.Depth;
import cistern.puncture.readiness.Guidance.Dose;
import cistern.puncture.readiness.Guidance.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whether imaging guidance is worth its radiation, and the needle and technique beside it. */
public final class GuidanceRules {

  /** Difficulties for which fluoroscopy is described. */
  private static final List<Question> FOR_FLUOROSCOPY =
      List.of(LUMBAR_FUSION, SCOLIOSIS, SEVERE_ARTHRITIS, FAILED_ATTEMPT, LANDMARKS_NOT_FELT);

  private static final List<Question> OTHER =
      List.of(LAMINECTOMY, OTHER_SPINE_SURGERY, SPINE_ANOMALY);

  private final Facts facts;

  private GuidanceRules(Facts facts) {
    this.facts = facts;
  }

  /** The rules under some facts. */
  public static GuidanceRules of(Facts facts) {
    return new GuidanceRules(facts);
  }

  /** What to consider for a person. */
  public Guidance check(Before before, PuncturedPerson subject) {
    Optional<Depth> depth = depth(before.body());
    List<Question> strong = before.answers().with(Answer.YES, FOR_FLUOROSCOPY);
    List<Question> weak = before.answers().with(Answer.YES, OTHER);
    List<String> reasons = new ArrayList<>();
    strong.forEach(q -> reasons.add(q.term()));
    weak.forEach(q -> reasons.add(q.term()));
    depth.filter(Depth::isDeep).ifPresent(d -> reasons.add("a long way to the fluid"));
    Method method = method(reasons, strong);
    return new Guidance(
        method,
        reasons,
        open(before, depth),
        depth,
        advice(method, strong, weak, subject),
        List.of(dose("fluoroscopy"), dose("ct")));
  }

  /** Needle and technique with the size of their effects, conflicts beside each other. */
  public List<Advice> technique() {
    return facts.keys("technique.").stream()
        .map(
            key ->
                new Advice(
                    key.substring("technique.".length()), facts.word(key), facts.grounds(key)))
        .toList();
  }

  private static Method method(List<String> reasons, List<Question> strong) {
    if (reasons.isEmpty()) {
      return Method.LANDMARKS;
    }
    return strong.isEmpty() ? Method.ULTRASOUND : Method.ULTRASOUND_OR_FLUOROSCOPY;
  }

  private static List<String> open(Before before, Optional<Depth> depth) {
    List<String> open = new ArrayList<>();
    before.answers().with(Answer.UNKNOWN, FOR_FLUOROSCOPY).forEach(q -> open.add(q.term()));
    before.answers().with(Answer.UNKNOWN, OTHER).forEach(q -> open.add(q.term()));
    if (depth.isEmpty()) {
      open.add("BMI, or the depth on images");
    }
    return open;
  }

  /** Measured, else distance (inches) = 0.077 · BMI + 0.88 (AJNR 2016;37:572), oblique route. */
  Optional<Depth> depth(Before.Body body) {
    double deep = facts.number("depth.deep");
    OptionalDouble measured = body.skinToCsfCm();
    if (measured.isPresent()) {
      double cm = measured.getAsDouble();
      return Optional.of(new Depth(cm, true, cm > deep, facts.grounds("depth.deep")));
    }
    if (body.bmi().isEmpty()) {
      return Optional.empty();
    }
    double inches =
        facts.number("depth.oblique.slope") * body.bmi().getAsDouble()
            + facts.number("depth.oblique.base");
    double cm = inches * facts.number("length.inch");
    return Optional.of(
        new Depth(
            cm,
            false,
            cm > deep,
            facts.grounds(
                "depth.oblique.slope", "depth.oblique.base", "length.inch", "depth.deep")));
  }

  private List<Advice> advice(
      Method method, List<Question> strong, List<Question> weak, PuncturedPerson subject) {
    List<Advice> all = new ArrayList<>();
    all.add(advice("default"));
    if (method != Method.LANDMARKS) {
      all.add(advice("ultrasound"));
      all.add(advice("ultrasound.dose"));
    }
    if (method == Method.ULTRASOUND_OR_FLUOROSCOPY) {
      all.add(advice("fluoroscopy"));
      all.add(advice("success"));
      if (PregnancyQuestion.isAsked(facts, subject) && subject.pregnancy() != Answer.NO) {
        all.add(
            new Advice(
                "pregnancy",
                facts.word("precaution.pregnancy"),
                facts.grounds("precaution.pregnancy")));
      }
    }
    boolean isOperated = strong.contains(LUMBAR_FUSION) || !weak.isEmpty();
    if (isOperated) {
      all.add(advice("surgery"));
    }
    all.add(advice("failure"));
    all.add(advice("level"));
    return all;
  }

  private Advice advice(String code) {
    String key = "guidance." + code;
    return new Advice(code, facts.word(key), facts.grounds(key));
  }

  private Dose dose(String method) {
    String key = "guidance." + method + ".dose.";
    return new Dose(
        method,
        facts.number(key + "mean"),
        facts.number(key + "lower"),
        facts.number(key + "upper"),
        facts.grounds(key + "mean", key + "lower", key + "upper"));
  }

  /** A dose in words. */
  public static String toText(Dose dose) {
    return dose.method()
        + ": mean "
        + Printed.significant(dose.mean())
        + " mSv ("
        + Printed.significant(dose.lower())
        + "–"
        + Printed.significant(dose.upper())
        + ")";
  }
}
