package cistern.clinic.standing;

import cistern.fact.Facts;

/**
 * What holds in a clinic for every case.
 *
 * @param facts in force
 * @param policy the local policy's file that changed them; empty without one
 */
public record Rules(Facts facts, String policy) {}
