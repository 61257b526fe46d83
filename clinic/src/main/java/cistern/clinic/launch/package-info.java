/** The commands that start the clinic, and the only place that reads clock and chance. */
@NullMarked
package cistern.clinic.launch;

import org.jspecify.annotations.NullMarked;
