package cistern.puncture.bleeding;

import static cistern.puncture.procedure.Question.ATRIAL_FIBRILLATION;
import static cistern.puncture.procedure.Question.BARE_METAL_STENT;
import static cistern.puncture.procedure.Question.BILEAFLET_AORTIC_VALVE;
import static cistern.puncture.procedure.Question.DRUG_ELUTING_STENT;
import static cistern.puncture.procedure.Question.MECHANICAL_VALVE;
import static cistern.puncture.procedure.Question.STROKE_OR_TIA;
import static cistern.puncture.procedure.Question.THROMBOSIS_ON_TREATMENT;
import static cistern.puncture.procedure.Question.VENOUS_THROMBOEMBOLISM;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.procedure.Anticoagulation;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Reasons not to interrupt an antithrombotic without the prescriber (ABN 2018). */
public final class ThrombosisFlags {

  private static final String STENT = "recent-stent";
  private static final String RISK = "high-thrombotic-risk";

  private final Facts facts;

  private ThrombosisFlags(Facts facts) {
    this.facts = facts;
  }

  /** The flags under some facts. */
  public static ThrombosisFlags of(Facts facts) {
    return new ThrombosisFlags(facts);
  }

  /**
   * What is there, and what is open. Open questions are asked when an antithrombotic is in use or
   * nobody knows.
   */
  public List<Precaution> check(Before before) {
    List<Precaution> all = new ArrayList<>();
    add(
        all,
        before,
        STENT,
        List.of(stent(before, DRUG_ELUTING_STENT), stent(before, BARE_METAL_STENT)));
    add(
        all,
        before,
        RISK,
        List.of(clot(before), clotOnTreatment(before), valve(before), stroke(before)));
    return all;
  }

  private void add(List<Precaution> all, Before before, String code, List<Flag> flags) {
    List<String> present = flags.stream().filter(f -> f.there.isYes()).map(Flag::text).toList();
    List<String> open = flags.stream().filter(f -> !f.there.isKnown()).map(Flag::text).toList();
    if (!present.isEmpty()) {
      all.add(Precaution.present(facts, code, String.join("; ", present) + ". "));
    }
    boolean mayBeTaken =
        before.anticoagulation().antithrombotics().map(list -> !list.isEmpty()).orElse(true);
    if (!open.isEmpty() && mayBeTaken) {
      all.add(Precaution.open(facts, code, "Ask: " + String.join("; ", open) + "."));
    }
    if (present.isEmpty() && open.isEmpty()) {
      all.add(Precaution.checked(facts, code, "None of the recorded kind."));
    }
  }

  private Flag stent(Before before, Question kind) {
    String key = kind == DRUG_ELUTING_STENT ? "drug-eluting-stent" : "bare-metal-stent";
    double limit = facts.number("thrombosis." + key + ".months");
    return recent(before, kind, limit);
  }

  private Flag clot(Before before) {
    return recent(
        before, VENOUS_THROMBOEMBOLISM, facts.number("thrombosis.venous-thromboembolism.months"));
  }

  private static Flag clotOnTreatment(Before before) {
    return new Flag(
        before.answers().answer(THROMBOSIS_ON_TREATMENT), THROMBOSIS_ON_TREATMENT.term());
  }

  private static Flag valve(Before before) {
    Answer valve = before.answers().answer(MECHANICAL_VALVE);
    if (!valve.isYes()) {
      return new Flag(valve, MECHANICAL_VALVE.term());
    }
    Answer low = before.answers().answer(BILEAFLET_AORTIC_VALVE);
    return switch (low) {
      case YES -> new Flag(Answer.NO, MECHANICAL_VALVE.term());
      case NO -> new Flag(Answer.YES, MECHANICAL_VALVE.term());
      case UNKNOWN -> new Flag(Answer.UNKNOWN, "is it " + BILEAFLET_AORTIC_VALVE.term());
    };
  }

  private Flag stroke(Before before) {
    Answer both =
        both(before.answers().answer(ATRIAL_FIBRILLATION), before.answers().answer(STROKE_OR_TIA));
    String term = "atrial fibrillation with stroke or TIA";
    if (!both.isYes()) {
      return new Flag(both, term);
    }
    Flag recent = recent(before, STROKE_OR_TIA, facts.number("thrombosis.stroke-or-tia.months"));
    OptionalDouble score = before.anticoagulation().cha2ds2Vasc();
    if (recent.there.isYes()
        || (score.isPresent()
            && score.getAsDouble() >= facts.number("thrombosis.cha2ds2-vasc.from"))) {
      return new Flag(Answer.YES, term);
    }
    boolean isOpen = !recent.there.isKnown() || score.isEmpty();
    return new Flag(
        isOpen ? Answer.UNKNOWN : Answer.NO, term + ", when, and the CHA₂DS₂-VASc score");
  }

  private static Answer both(Answer one, Answer other) {
    if (one == Answer.NO || other == Answer.NO) {
      return Answer.NO;
    }
    return one.isYes() && other.isYes() ? Answer.YES : Answer.UNKNOWN;
  }

  private static Flag recent(Before before, Question event, double months) {
    Answer happened = before.answers().answer(event);
    if (!happened.isYes()) {
      return new Flag(happened, event.term());
    }
    Anticoagulation known = before.anticoagulation();
    OptionalDouble ago = known.monthsSince(event);
    if (ago.isEmpty()) {
      return new Flag(Answer.UNKNOWN, event.term() + ", how many months ago");
    }
    return new Flag(
        ago.getAsDouble() < months ? Answer.YES : Answer.NO,
        event.term()
            + ", "
            + cistern.finding.Printed.significant(ago.getAsDouble())
            + " months ago");
  }

  private record Flag(Answer there, String text) {}
}
