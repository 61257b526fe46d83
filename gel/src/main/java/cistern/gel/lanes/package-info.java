/** Lanes: what a person says of them and where they are found. May use image and net. */
@NullMarked
package cistern.gel.lanes;

import org.jspecify.annotations.NullMarked;
