/**
 * The work-up file: JSON in, one domain record out, or every reason why not. Uses the JSON reader,
 * the units and the medicine.
 */
@NullMarked
package cistern.exchange.workup;

import org.jspecify.annotations.NullMarked;
