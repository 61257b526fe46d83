/** Who did or saw what, when, in a chain of hashes that shows a change. Uses the store. */
@NullMarked
package cistern.clinic.audit;

import org.jspecify.annotations.NullMarked;
