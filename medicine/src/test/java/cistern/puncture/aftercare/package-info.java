/** Tests of one room of the puncture; every person in them is invented. */
@NullMarked
package cistern.puncture.aftercare;

import org.jspecify.annotations.NullMarked;
