package cistern.exchange.clinical;

import cistern.finding.Problem;

/**
 * An answer to an urgent rule without a name, a time or a reason: the rule stays open.
 *
 * @param place where it stands
 */
record AnswerIncomplete(String place) implements Problem {

  @Override
  public String code() {
    return "answer-incomplete";
  }

  @Override
  public String text() {
    return "An answer needs a name, a time and a reason: this one does not count, and what it"
        + " answers stays open.";
  }
}
