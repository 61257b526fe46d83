/** Tests of the package of the same name. */
@NullMarked
package cistern.gel.reading;

import org.jspecify.annotations.NullMarked;
