/** Tests of one room of the puncture; every person in them is invented. */
@NullMarked
package cistern.puncture.drug;

import org.jspecify.annotations.NullMarked;
