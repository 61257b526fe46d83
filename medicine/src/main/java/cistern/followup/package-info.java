/**
 * Repeat punctures of one person: whether they compare, what changed by more than measurement, and
 * what bands that come or go can mean. Uses the findings of each puncture.
 */
@NullMarked
package cistern.followup;

import org.jspecify.annotations.NullMarked;
