/**
 * Whether to go on to a puncture: contraindications by weight, and what they amount to. Uses
 * procedure, guideline and bleeding.
 */
@NullMarked
package cistern.puncture.decision;

import org.jspecify.annotations.NullMarked;
