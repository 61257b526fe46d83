/** Bands within lanes, with the noise they stand in. May use image, membrane and lanes. */
@NullMarked
package cistern.gel.bands;

import org.jspecify.annotations.NullMarked;
