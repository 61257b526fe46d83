package cistern.report;

import cistern.criteria.Count;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.differential.Prior;
import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Answer;
import cistern.panel.Panel;
import cistern.weighing.ClinicalPicture;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** An invented puncture with clinical evidence. */
public final class WeighedCase {

  /** A first attack with one lesion and two regions. */
  public static final Evidence FIRST_ATTACK =
      new Evidence(
          Presentation.ATTACK,
          Count.of(1),
          Count.of(1),
          Map.of(
              Item.NO_BETTER_EXPLANATION, Answer.YES,
              Item.PERIVENTRICULAR, Answer.YES,
              Item.INFRATENTORIAL, Answer.YES,
              Item.CORTICAL_JUXTACORTICAL, Answer.NO));

  private WeighedCase() {}

  /** The usual case: a first attack, and 30 to 60 % before the puncture. */
  public static Interpretation usual(InventedPuncture puncture) {
    return of(puncture, FIRST_ATTACK, Optional.of(new Prior(0.3, 0.6, Answer.YES)));
  }

  /** A puncture with some evidence. */
  public static Interpretation of(
      InventedPuncture puncture, Evidence evidence, Optional<Prior> prior) {
    return Interpreter.of(Facts.standard())
        .interpret(
            new Workup(
                    puncture.id(),
                    Panel.of(puncture.person(), puncture.results()),
                    puncture.bands(),
                    List.of())
                .withClinical(new ClinicalPicture(evidence, prior, List.of())));
  }
}
