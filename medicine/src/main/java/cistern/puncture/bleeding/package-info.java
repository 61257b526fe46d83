/**
 * Platelets, clotting and antithrombotics against every guideline, never averaged and never an
 * instruction. Uses procedure and guideline.
 */
@NullMarked
package cistern.puncture.bleeding;

import org.jspecify.annotations.NullMarked;
