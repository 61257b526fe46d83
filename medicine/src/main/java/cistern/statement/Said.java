package cistern.statement;

/**
 * A sentence of a catalogue.
 *
 * @param code the name in files
 * @param text the sentence
 */
public record Said(String code, String text) implements Statement {}
