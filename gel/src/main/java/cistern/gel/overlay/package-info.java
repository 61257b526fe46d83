/** A reading drawn over the picture it was taken from. May use reading and image. */
@NullMarked
package cistern.gel.overlay;

import org.jspecify.annotations.NullMarked;
