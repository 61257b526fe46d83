package cistern.criteria;

import cistern.fact.Grounds;

/**
 * Something that an edition asks to think of: it never changes a verdict.
 *
 * @param code the name in files
 * @param text the sentence
 * @param grounds what it rests on
 */
public record Prompt(String code, String text, Grounds grounds) {}
