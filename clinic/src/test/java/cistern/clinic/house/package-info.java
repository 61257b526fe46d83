/** Tests of the rules of a house as they are kept. */
@NullMarked
package cistern.clinic.house;

import org.jspecify.annotations.NullMarked;
