/**
 * Many panels at once: columns of values instead of one record each. Uses barrier, fluid, bands and
 * what they stand on.
 */
@NullMarked
package cistern.cohort;

import org.jspecify.annotations.NullMarked;
