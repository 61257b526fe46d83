/** Tests of this package of the clinic. */
@NullMarked
package cistern.clinic.paste;

import org.jspecify.annotations.NullMarked;
