/** The screen of the audit trail. Uses the audit trail and the web. */
@NullMarked
package cistern.clinic.trail;

import org.jspecify.annotations.NullMarked;
