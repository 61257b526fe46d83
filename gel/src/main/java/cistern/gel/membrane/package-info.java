/**
 * Where the membrane lies in the picture, how its lanes run and whether stain is dark. May use
 * image.
 */
@NullMarked
package cistern.gel.membrane;

import org.jspecify.annotations.NullMarked;
