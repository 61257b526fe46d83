package cistern.interpretation;

import cistern.analysis.Puncture;
import cistern.weighing.Judgement;

/**
 * What of one puncture is counted over many: the same findings and verdicts as in its {@link
 * Interpretation}, without intervals, sentences and plans.
 *
 * @param workup what was given
 * @param puncture what was found; nothing says what measurement error leaves open
 * @param judgement what the criteria and the cohorts say
 */
public record Judged(Workup workup, Puncture puncture, Judgement judgement) {}
