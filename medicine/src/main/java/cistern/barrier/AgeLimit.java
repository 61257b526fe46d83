package cistern.barrier;

import cistern.fact.Grounds;
import cistern.finding.Limits;

/** A published limit of the albumin quotient that depends on age. */
public sealed interface AgeLimit
    permits ChildrensTable, EightPlusAgeOverTwentyFive, FourPlusAgeOverFifteen {

  /** The rule's name, printed with every verdict. */
  String rule();

  /** The limits at an age in years. */
  Limits at(double ageYears);

  /** What the rule rests on. */
  Grounds grounds();
}
