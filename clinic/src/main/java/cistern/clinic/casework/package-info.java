/**
 * The screens of one case: where it stands, its steps, what it says, signing, comparing. Uses
 * everything below.
 */
@NullMarked
package cistern.clinic.casework;

import org.jspecify.annotations.NullMarked;
