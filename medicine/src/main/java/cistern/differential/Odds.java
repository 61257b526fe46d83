package cistern.differential;

/** Probabilities as odds, and back: logit P′ = logit P + ln LR. */
public final class Odds {

  private Odds() {}

  /** The probability after evidence that moves the log odds, natural logarithm. */
  public static double probabilityAfter(double prior, double logLikelihoodRatio) {
    if (prior <= 0 || prior >= 1) {
      return prior;
    }
    return 1 / (1 + Math.exp(-(Math.log(prior / (1 - prior)) + logLikelihoodRatio)));
  }
}
