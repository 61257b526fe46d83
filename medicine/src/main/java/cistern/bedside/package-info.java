/**
 * What is known at the bedside beside the fluid: signs, syndromes, treatments, what was looked for
 * in the laboratory of microbiology, and who answered an urgent rule. Uses measurements.
 */
@NullMarked
package cistern.bedside;

import org.jspecify.annotations.NullMarked;
