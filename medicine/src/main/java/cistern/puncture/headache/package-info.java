/** Headache from the puncture: its risk beforehand, and what to ask afterwards. Uses procedure. */
@NullMarked
package cistern.puncture.headache;

import org.jspecify.annotations.NullMarked;
