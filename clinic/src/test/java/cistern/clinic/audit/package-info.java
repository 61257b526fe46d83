/** Tests of this package of the clinic. */
@NullMarked
package cistern.clinic.audit;

import org.jspecify.annotations.NullMarked;
