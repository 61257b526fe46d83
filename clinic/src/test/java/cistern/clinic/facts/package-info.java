/** Tests of the screens of facts and rules. */
@NullMarked
package cistern.clinic.facts;

import org.jspecify.annotations.NullMarked;
