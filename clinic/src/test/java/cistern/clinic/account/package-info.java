/** Tests of this package of the clinic. */
@NullMarked
package cistern.clinic.account;

import org.jspecify.annotations.NullMarked;
