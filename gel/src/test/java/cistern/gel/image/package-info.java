/** Tests of the package of the same name. */
@NullMarked
package cistern.gel.image;

import org.jspecify.annotations.NullMarked;
