/** Tests of one room of the puncture; every person in them is invented. */
@NullMarked
package cistern.puncture.headache;

import org.jspecify.annotations.NullMarked;
