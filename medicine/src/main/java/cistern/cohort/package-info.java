/**
 * Many punctures at once: what a clinic's own numbers say of its limits, its quality and its
 * findings, and columns of values instead of one record each. Uses the interpretation, barrier,
 * fluid, bands and what they stand on.
 */
@NullMarked
package cistern.cohort;

import org.jspecify.annotations.NullMarked;
