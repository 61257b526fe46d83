/** Tests of this package of the clinic. */
@NullMarked
package cistern.clinic.cases;

import org.jspecify.annotations.NullMarked;
