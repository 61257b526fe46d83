/**
 * Cases with every version and every signed report; nothing is overwritten. Uses the store, the
 * audit trail and the work-up file.
 */
@NullMarked
package cistern.clinic.cases;

import org.jspecify.annotations.NullMarked;
