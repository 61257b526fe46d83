/** Tests of one room of the puncture; every person in them is invented. */
@NullMarked
package cistern.puncture.decision;

import org.jspecify.annotations.NullMarked;
