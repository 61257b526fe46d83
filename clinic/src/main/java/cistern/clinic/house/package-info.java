/**
 * What a house decides for itself: every change of a rule, kept for good. Uses the store and the
 * audit trail.
 */
@NullMarked
package cistern.clinic.house;

import org.jspecify.annotations.NullMarked;
