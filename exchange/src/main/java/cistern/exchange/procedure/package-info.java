/**
 * The {@code procedure} of a work-up file, with units and places. Uses the JSON and UCUM readers.
 */
@NullMarked
package cistern.exchange.procedure;

import org.jspecify.annotations.NullMarked;
