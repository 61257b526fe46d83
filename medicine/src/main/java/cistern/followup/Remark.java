package cistern.followup;

import cistern.fact.Grounds;

/**
 * One sentence about a series of punctures.
 *
 * @param code the name in files
 * @param text the sentence
 * @param grounds what it rests on
 */
public record Remark(String code, String text, Grounds grounds) {}
