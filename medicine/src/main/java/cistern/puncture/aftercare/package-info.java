/**
 * After the puncture: what must be said first, when a blood patch may be spoken of, what has been
 * studied and within which limits, and when to call. Uses procedure, bleeding and headache.
 */
@NullMarked
package cistern.puncture.aftercare;

import org.jspecify.annotations.NullMarked;
