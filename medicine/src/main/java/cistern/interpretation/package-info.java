/** Composes everything into one record; the only place that knows all of the medicine. */
@NullMarked
package cistern.interpretation;

import org.jspecify.annotations.NullMarked;
