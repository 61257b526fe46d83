/** Tests of the package of the same name. */
@NullMarked
package cistern.gel.bands;

import org.jspecify.annotations.NullMarked;
