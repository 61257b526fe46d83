/** Tests of work-ups without what names their person. */
@NullMarked
package cistern.exchange.deidentified;

import org.jspecify.annotations.NullMarked;
