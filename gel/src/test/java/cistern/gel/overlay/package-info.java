/** Tests of the package of the same name. */
@NullMarked
package cistern.gel.overlay;

import org.jspecify.annotations.NullMarked;
