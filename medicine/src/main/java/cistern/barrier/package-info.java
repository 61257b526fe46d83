/**
 * Barrier and intrathecal synthesis: albumin quotient, quotient limits, indices, rate, light
 * chains, antibody indices and blood contamination, one class a published rule. Uses the panel.
 */
@NullMarked
package cistern.barrier;

import org.jspecify.annotations.NullMarked;
