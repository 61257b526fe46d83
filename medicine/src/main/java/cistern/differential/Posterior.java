package cistern.differential;

import cistern.fact.Grounds;

/**
 * How likely one disease is.
 *
 * @param disease the disease
 * @param probability at the middle of the prior range and the means of the rates, 0 to 1
 * @param interval95 over the prior range and the spread of the rates
 * @param grounds the counts behind it
 */
public record Posterior(
    Disease disease, double probability, Proportion.Ends interval95, Grounds grounds) {}
