/** Tests of the package of the same name. */
@NullMarked
package cistern.gel.pairing;

import org.jspecify.annotations.NullMarked;
