/** Tests of the procedure in a work-up file; every person in them is invented. */
@NullMarked
package cistern.exchange.procedure;

import org.jspecify.annotations.NullMarked;
