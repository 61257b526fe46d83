package cistern.exchange.workup;

import cistern.finding.Problem;

/**
 * Two places of a work-up that answer the same question differently.
 *
 * @param place the second place
 * @param term what is asked
 */
record SaidTwoWays(String place, String term) implements Problem {

  @Override
  public String code() {
    return "said-two-ways";
  }

  @Override
  public String text() {
    return "The work-up answers %s in two ways: the answer that asks for more care counts until a person settles it."
        .formatted(term);
  }
}
