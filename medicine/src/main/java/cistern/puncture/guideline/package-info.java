/** Who says what: the bodies whose limits and intervals are shown side by side. Uses facts. */
@NullMarked
package cistern.puncture.guideline;

import org.jspecify.annotations.NullMarked;
