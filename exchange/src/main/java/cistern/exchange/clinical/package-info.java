/**
 * What a work-up file says beside the results: evidence for the criteria, the probability before
 * the puncture, and serology. Uses the JSON toolkit and the medicine.
 */
@NullMarked
package cistern.exchange.clinical;

import org.jspecify.annotations.NullMarked;
