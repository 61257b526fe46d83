package cistern.clinic.status;

import cistern.fact.Facts;

/**
 * What holds in a clinic for every case.
 *
 * @param facts in force
 * @param policy the local policy's file that changed them; empty without one
 */
public record RulesInForce(Facts facts, String policy) {}
