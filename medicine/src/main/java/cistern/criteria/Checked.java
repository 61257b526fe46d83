package cistern.criteria;

import cistern.measurement.Answer;

/**
 * One line of an edition's checklist.
 *
 * @param item what is asked
 * @param answer whether it is satisfied
 * @param evidence what that rests on, in words
 */
public record Checked(Item item, Answer answer, String evidence) {}
