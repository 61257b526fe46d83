/** Tests of this package of the clinic. */
@NullMarked
package cistern.clinic.store;

import org.jspecify.annotations.NullMarked;
