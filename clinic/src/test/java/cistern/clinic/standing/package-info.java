/** Tests of where a case stands. */
@NullMarked
package cistern.clinic.standing;

import org.jspecify.annotations.NullMarked;
