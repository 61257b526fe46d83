package cistern.puncture.headache;

import cistern.fact.Grounds;

/**
 * What can be considered next, with its window.
 *
 * @param code the name in files
 * @param text what, and who decides
 * @param window how the time stands to the published window; may be empty
 * @param grounds what it rests on
 */
public record Step(String code, String text, String window, Grounds grounds) {}
