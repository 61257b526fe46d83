/** The bands of a pair of lanes, as the net shows and the picture measures them. May use lanes. */
@NullMarked
package cistern.gel.bands;

import org.jspecify.annotations.NullMarked;
