/** Tests of where a case stands. */
@NullMarked
package cistern.clinic.status;

import org.jspecify.annotations.NullMarked;
