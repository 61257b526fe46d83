package cistern.clinic.paste;

import cistern.measurement.Sample;

/** What one line of a pasted block is. */
public sealed interface PastedLine {

  /** The line as it was pasted. */
  String line();

  /**
   * A result.
   *
   * @param line as it was pasted
   * @param sample what was measured
   * @param typed number and unit, as a person would type them
   */
  record Understood(String line, Sample sample, String typed) implements PastedLine {}

  /**
   * Something else.
   *
   * @param line as it was pasted
   * @param reason why nothing is taken from it
   */
  record NotUnderstood(String line, String reason) implements PastedLine {}
}
