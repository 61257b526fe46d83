package cistern.criteria;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Answer;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SequencedMap;

/** Both editions side by side, never merged. */
public final class Criteria {

  private final List<Rulings> editions;
  private final Grounds betterExplanation;
  private final Facts facts;

  private Criteria(Facts facts) {
    this.facts = facts;
    editions =
        List.of(new Rulings(new McDonald2017(facts)), new Rulings(new McDonald2024Draft(facts)));
    betterExplanation = facts.grounds("criteria.better-explanation");
  }

  /** The editions under some facts. */
  public static Criteria of(Facts facts) {
    return new Criteria(facts);
  }

  /** What each edition says where nothing holds it back, in order of their years. */
  public List<CriteriaResult> interpret(Evidence evidence, CsfPositivity fluid) {
    return interpret(evidence, fluid, Restraint.NONE);
  }

  /** What each edition says, in order of their years. */
  public List<CriteriaResult> interpret(
      Evidence evidence, CsfPositivity fluid, Restraint restraint) {
    return editions.stream()
        .map(e -> evaluation(e, evidence, fluid))
        .map(e -> restraint.isContradicted() ? e.contradicted() : e.result())
        .toList();
  }

  /** The verdict of each edition alone, by its year. */
  public SequencedMap<String, CriteriaVerdict> verdicts(
      Evidence evidence, CsfPositivity fluid, Restraint restraint) {
    SequencedMap<String, CriteriaVerdict> verdicts = new LinkedHashMap<>();
    for (Rulings edition : editions) {
      Evaluation evaluation = evaluation(edition, evidence, fluid);
      verdicts.put(
          edition.edition().year(),
          restraint.isContradicted() ? evaluation.whenContradicted() : evaluation.verdict());
    }
    return verdicts;
  }

  /** The verdict of each edition alone, where nothing holds it back. */
  public List<CriteriaVerdict> verdicts(Evidence evidence, CsfPositivity fluid) {
    return editions.stream().map(e -> evaluation(e, evidence, fluid).verdict()).toList();
  }

  /** What the fluid can change in each edition, by its year. */
  public SequencedMap<String, PunctureEffect> puncture(Evidence evidence, CsfPositivity fluid) {
    SequencedMap<String, PunctureEffect> effects = new LinkedHashMap<>();
    for (Rulings rulings : editions) {
      Edition edition = rulings.edition();
      boolean isUnresolved =
          edition.isUnresolved(evidence.presentation())
              && evidence.answer(Item.NO_BETTER_EXPLANATION) != Answer.NO;
      effects.put(
          edition.year(),
          isUnresolved ? PunctureEffect.UNRESOLVED : effect(rulings, evidence, fluid));
    }
    return effects;
  }

  /** Which input makes the difference where the editions disagree, in words. */
  public Optional<String> difference(
      Evidence evidence, CsfPositivity fluid, List<CriteriaResult> results) {
    return Difference.of(this, evidence, fluid, results);
  }

  /** What the editions ask to think of at an age. */
  public List<Prompt> prompts(Evidence evidence, OptionalDouble ageYears) {
    return Prompts.of(evidence, ageYears, facts);
  }

  /** What could still come out. */
  public Outlook outlook(Evidence evidence, CsfPositivity fluid, Outlook.Chances chances) {
    return Outlook.of(editions, evidence, fluid, chances);
  }

  private PunctureEffect effect(Rulings edition, Evidence evidence, CsfPositivity fluid) {
    return PunctureEffect.of(
        evaluation(edition, evidence, fluid.with(Answer.YES)),
        evaluation(edition, evidence, fluid.with(Answer.NO)));
  }

  private Evaluation evaluation(Rulings edition, Evidence evidence, CsfPositivity fluid) {
    return new Evaluation(edition, evidence, fluid, betterExplanation);
  }
}
