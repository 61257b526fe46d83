/** Tests of the bands that people keep, strike and draw. */
@NullMarked
package cistern.clinic.casework.gel;

import org.jspecify.annotations.NullMarked;
