/** Tests of this package of the clinic. */
@NullMarked
package cistern.clinic.form;

import org.jspecify.annotations.NullMarked;
