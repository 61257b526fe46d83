/**
 * What a work-up says of the procedure itself, before, during and after: answers, times and
 * amounts, nothing concluded. Uses facts and measurements.
 */
@NullMarked
package cistern.puncture.procedure;

import org.jspecify.annotations.NullMarked;
