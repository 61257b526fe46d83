/** The reading as a record, as JSON and as text. Knows nothing of how it was read. */
@NullMarked
package cistern.gel.reading;

import org.jspecify.annotations.NullMarked;
