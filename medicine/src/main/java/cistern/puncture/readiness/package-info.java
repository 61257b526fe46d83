/**
 * What is checked, what is open and what is present before a puncture; guidance, needle and
 * pressure. Uses procedure and guideline.
 */
@NullMarked
package cistern.puncture.readiness;

import org.jspecify.annotations.NullMarked;
