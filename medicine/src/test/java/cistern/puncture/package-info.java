/** Tests of the planning of a puncture; every person in them is invented. */
@NullMarked
package cistern.puncture;

import org.jspecify.annotations.NullMarked;
