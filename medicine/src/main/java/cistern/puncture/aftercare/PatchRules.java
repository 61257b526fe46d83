package cistern.puncture.aftercare;

import static cistern.puncture.procedure.ThreeValued.any;
import static cistern.puncture.procedure.ThreeValued.not;
import static cistern.puncture.procedure.ThreeValued.when;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.HoldVerdict;
import cistern.puncture.decision.Contraindications.Standing;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.WarningSign;
import cistern.urgent.Urgency;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** When a blood patch must not be spoken of; what is unknown stays open and is never a no. */
final class PatchRules {

  private static final String ATYPICAL_CELLS = "atypical-cells";

  private final Facts facts;
  private final AfterCareRules rules;

  PatchRules(Facts facts, AfterCareRules rules) {
    this.facts = facts;
    this.rules = rules;
  }

  AfterCare.PatchInformation check(
      Complaint complaint,
      List<Urgency> urgent,
      Standing clotting,
      List<AntithromboticPlan> today) {
    List<AfterCare.Reason> because = new ArrayList<>();
    List<String> open = new ArrayList<>();
    List<Found> all =
        List.of(
            new Found("emergency-open", emergencies(complaint, urgent), "red flags not asked"),
            new Found("infection-open", infection(complaint), "bacteraemia, CRP, leukocytes"),
            new Found("site-infection", site(complaint), "infection at the site"),
            new Found(
                "clotting-or-interval",
                any(clotting.present(), intervals(complaint, today)),
                "clotting and antithrombotics again, today"),
            new Found("mass-or-pressure", mass(complaint), "mass or raised pressure"),
            new Found("spine", spine(complaint), "the spine at the level"),
            new Found("no-consent", consent(complaint), "consent to a patch"),
            new Found("diagnosis-unclear", unclear(complaint), "posture, onset, another cause"),
            new Found("blood-disease", blood(complaint), "leukaemia, HIV with infection"),
            new Found("too-early", early(complaint), "hours since the puncture"));
    for (Found found : all) {
      switch (found.present) {
        case YES -> because.add(reason(found.code));
        case UNKNOWN -> open.add(found.ask);
        case NO -> {}
      }
    }
    return new AfterCare.PatchInformation(because, open);
  }

  private record Found(String code, Answer present, String ask) {}

  private AfterCare.Reason reason(String code) {
    String key = "patch." + code + ".say";
    return new AfterCare.Reason(code, facts.word(key), facts.grounds(key));
  }

  /** An open red flag, or an emergency that cannot be denied; other flags not asked stay open. */
  private Answer emergencies(Complaint c, List<Urgency> urgent) {
    boolean isOpen =
        urgent.stream()
            .filter(u -> !u.code().equals(AfterCareRules.SEVERE))
            .anyMatch(u -> u.holds() && u.answered().isEmpty());
    boolean isUnasked = rules.emergency(c) == Answer.UNKNOWN;
    return isOpen || isUnasked
        ? Answer.YES
        : rules.flag(c) == Answer.UNKNOWN ? Answer.UNKNOWN : Answer.NO;
  }

  private static Answer infection(Complaint c) {
    return any(
        when(c.person().beside().fluid().isInfectionOpen()),
        c.sign(WarningSign.FEVER),
        c.asked(Question.BACTERAEMIA),
        c.asked(Question.INFLAMMATION));
  }

  private static Answer site(Complaint c) {
    return any(c.sign(WarningSign.PUS), c.before(Question.SITE_INFECTION));
  }

  /** Every interval must have passed again, at the time at which it is looked at. */
  private static Answer intervals(Complaint c, List<AntithromboticPlan> today) {
    boolean isAny =
        today.stream().anyMatch(p -> p.together() != HoldVerdict.PASSED)
            || !c.drugs().askedAbout().isEmpty();
    return isAny ? Answer.YES : c.drugs().isAsked() ? Answer.NO : Answer.UNKNOWN;
  }

  private Answer mass(Complaint c) {
    Answer raised =
        c.procedure().done().position() == Position.SITTING
            ? Answer.NO
            : when(
                c.procedure().done().openingPressure(),
                v -> v >= facts.number("patch.pressure-from"));
    return any(
        c.before(Question.MASS_EFFECT),
        c.before(Question.HYDROCEPHALUS),
        when(c.asked(Question.SUBDURAL_WITH_SHIFT).isYes()),
        raised);
  }

  private static Answer spine(Complaint c) {
    return any(
        c.before(Question.SPINAL_BLOCK),
        c.before(Question.DYSRAPHISM),
        c.before(Question.LUMBAR_FUSION));
  }

  private static Answer consent(Complaint c) {
    Answer agreed = c.asked(Question.PATCH_CONSENT);
    return agreed.isKnown() ? not(agreed) : Answer.UNKNOWN;
  }

  private Answer unclear(Complaint c) {
    Answer late = when(c.times().daysToOnset(), d -> d > facts.number("patch.onset-beyond-days"));
    Answer lateDay = when(c.firstDay(), d -> d > facts.number("patch.onset-beyond-days"));
    Answer posture = not(c.asked(Question.WORSE_UPRIGHT));
    Answer never =
        posture.isYes() && !c.asked(Question.BETTER_LYING).isYes()
            ? Answer.YES
            : posture == Answer.UNKNOWN ? Answer.UNKNOWN : Answer.NO;
    return any(late.isKnown() ? late : lateDay, never, c.asked(Question.BETTER_EXPLANATION));
  }

  private static Answer blood(Complaint c) {
    return any(
        when(c.person().beside().fluid().holds(ATYPICAL_CELLS)),
        c.asked(Question.BLOOD_CANCER),
        c.asked(Question.HIV_WITH_INFECTION));
  }

  private Answer early(Complaint c) {
    Optional<OffsetDateTime> at = c.person().draw().at();
    Optional<OffsetDateTime> now = c.procedure().after().asOf();
    if (at.isEmpty() || now.isEmpty()) {
      return Answer.UNKNOWN;
    }
    double minutes = Duration.between(at.get(), now.get()).toMinutes();
    return when(minutes < facts.number("patch.least-hours") * 60);
  }
}
