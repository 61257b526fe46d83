/** Tubes, volumes, time limits, and results that are still due. Uses procedure. */
@NullMarked
package cistern.puncture.specimen;

import org.jspecify.annotations.NullMarked;
