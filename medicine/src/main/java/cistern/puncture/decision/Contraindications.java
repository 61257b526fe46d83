package cistern.puncture.decision;

import static cistern.puncture.procedure.ThreeValued.all;
import static cistern.puncture.procedure.ThreeValued.any;
import static cistern.puncture.procedure.ThreeValued.when;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.decision.Contraindication.Go;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import java.util.List;
import java.util.stream.Stream;

/** The contraindications in the order of their weight, the heaviest first. */
public final class Contraindications {

  private static final List<Question> TRIGGERS =
      List.of(
          Question.PAPILLOEDEMA,
          Question.NEW_SEIZURE,
          Question.CONTINUOUS_SEIZURES,
          Question.FOCAL_SIGNS,
          Question.IMMUNOCOMPROMISED);

  private final Facts facts;

  private Contraindications(Facts facts) {
    this.facts = facts;
  }

  /** The list under some facts. */
  public static Contraindications of(Facts known) {
    return new Contraindications(known);
  }

  /**
   * Every contraindication of a person.
   *
   * @param clotting what clotting asks for
   * @param drugs what the antithrombotics ask for
   */
  public List<Contraindication> check(
      Before before, PuncturedPerson person, Standing clotting, Standing drugs) {
    ProcedureAnswers known = before.answers();
    return List.of(
        entry("mass-or-raised-pressure", mass(known)),
        entry("spinal-block", one(known, Go.IMAGE_FIRST, Question.SPINAL_BLOCK)),
        entry("site-infection", one(known, Go.DO_NOT, Question.SITE_INFECTION)),
        entry("clotting", clotting),
        entry("antithrombotic", drugs),
        entry("spine-anomaly", spine(known)),
        entry("image-first", imaging(before)),
        entry("unstable", unstable(known)),
        entry("declined", declined(known)),
        entry("pregnancy", pregnancy(person)));
  }

  /**
   * How one thing stands.
   *
   * @param present whether it is there
   * @param go what it asks for when it is there
   * @param reasons what was recorded, or what is to be asked
   */
  public record Standing(Answer present, Go go, List<String> reasons) {
    /** Copies the reasons. */
    public Standing {
      reasons = List.copyOf(reasons);
    }
  }

  private Contraindication entry(String code, Standing standing) {
    String key = "contraindication." + code;
    return new Contraindication(
        code,
        standing.present,
        standing.go,
        facts.word(key + ".say"),
        facts.word(key + ".instead"),
        standing.reasons,
        facts.grounds(key + ".say"));
  }

  /** A lesion of the posterior fossa counts with mass effect only: in MS it is usual without. */
  private static Standing mass(ProcedureAnswers known) {
    Answer effect = known.answer(Question.MASS_EFFECT);
    Answer present =
        any(
            effect,
            known.answer(Question.HYDROCEPHALUS),
            all(known.answer(Question.POSTERIOR_FOSSA_LESION), effect),
            whenAsked(known, Question.HERNIATION_SIGNS));
    return standing(
        known,
        Go.DO_NOT,
        present,
        List.of(Question.MASS_EFFECT, Question.HYDROCEPHALUS, Question.HERNIATION_SIGNS));
  }

  private static Standing spine(ProcedureAnswers known) {
    Answer present =
        any(
            known.answer(Question.DYSRAPHISM),
            known.answer(Question.SPINE_ANOMALY),
            known.answer(Question.TONSILLAR_DESCENT),
            whenAsked(known, Question.TETHERED_CORD));
    return standing(
        known,
        Go.IMAGE_FIRST,
        present,
        List.of(
            Question.DYSRAPHISM,
            Question.SPINE_ANOMALY,
            Question.TONSILLAR_DESCENT,
            Question.TETHERED_CORD));
  }

  /** A sign of raised pressure while no scan was seen or the picture has changed since. */
  private Standing imaging(Before before) {
    ProcedureAnswers known = before.answers();
    double full = facts.number("image-first.idsa-2004.consciousness.score-below");
    Answer reduced =
        before.comaScore().isPresent()
            ? when(before.comaScore().getAsInt() < full)
            : Answer.UNKNOWN;
    Answer trigger = any(reduced, known.any(TRIGGERS));
    Answer reviewed = known.answer(Question.MRI_REVIEWED);
    Answer missing = any(when(!reviewed.isYes()), known.answer(Question.CHANGED_SINCE_SCAN));
    Answer present = all(trigger, missing);
    Stream<String> recorded =
        known.with(trigger.isYes() ? Answer.YES : Answer.UNKNOWN, TRIGGERS).stream()
            .map(Question::term);
    Stream<String> coma =
        reduced.isYes() || (!reduced.isKnown() && !trigger.isYes())
            ? Stream.of("consciousness (Glasgow coma scale)")
            : Stream.empty();
    Stream<String> scan =
        reviewed.isYes()
            ? known.answer(Question.CHANGED_SINCE_SCAN).isKnown()
                ? Stream.empty()
                : Stream.of("change since the scan")
            : Stream.of(present.isYes() ? "no brain scan was seen" : "a brain scan that was seen");
    return new Standing(
        present, Go.IMAGE_FIRST, Stream.of(coma, recorded, scan).flatMap(s -> s).toList());
  }

  private static Standing unstable(ProcedureAnswers known) {
    Answer present =
        any(
            known.answer(Question.CARDIORESPIRATORY),
            known.answer(Question.CONTINUOUS_SEIZURES),
            whenAsked(known, Question.CANNOT_BE_POSITIONED));
    return standing(
        known,
        Go.WAIT,
        present,
        List.of(
            Question.CARDIORESPIRATORY,
            Question.CONTINUOUS_SEIZURES,
            Question.CANNOT_BE_POSITIONED));
  }

  private static Standing declined(ProcedureAnswers known) {
    Answer consent = known.answer(Question.CONSENT);
    Answer present =
        any(
            known.answer(Question.DECLINED),
            cistern.puncture.procedure.ThreeValued.not(consent),
            whenAsked(known, Question.LACKS_CAPACITY));
    Stream<String> reasons =
        known
            .with(
                present.isYes() ? Answer.YES : Answer.UNKNOWN,
                List.of(Question.DECLINED, Question.LACKS_CAPACITY))
            .stream()
            .filter(q -> present.isYes() || q != Question.LACKS_CAPACITY)
            .map(Question::term);
    Stream<String> open =
        consent.isYes()
            ? Stream.empty()
            : Stream.of(consent == Answer.NO ? "no consent" : "consent not recorded");
    return new Standing(present, Go.DO_NOT, Stream.concat(reasons, open).toList());
  }

  private static Standing pregnancy(PuncturedPerson person) {
    return new Standing(person.pregnancy(), Go.GO, List.of());
  }

  private static Standing one(ProcedureAnswers known, Go go, Question question) {
    return standing(known, go, known.answer(question), List.of(question));
  }

  /** A question that older work-ups do not have: no while nobody asked it. */
  private static Answer whenAsked(ProcedureAnswers known, Question question) {
    return when(known.isYes(question));
  }

  private static Standing standing(
      ProcedureAnswers known, Go go, Answer present, List<Question> questions) {
    List<String> reasons =
        questions.stream()
            .filter(q -> known.answer(q) == (present.isYes() ? Answer.YES : Answer.UNKNOWN))
            .filter(q -> present.isYes() || !OPTIONAL.contains(q))
            .map(Question::term)
            .toList();
    return new Standing(present, go, reasons);
  }

  private static final List<Question> OPTIONAL =
      List.of(
          Question.HERNIATION_SIGNS,
          Question.TETHERED_CORD,
          Question.CANNOT_BE_POSITIONED,
          Question.LACKS_CAPACITY);
}
