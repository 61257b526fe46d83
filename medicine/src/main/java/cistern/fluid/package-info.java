/**
 * What a fluid shows by itself: cells, protein, glucose, lactate and traces of nerve tissue. Uses
 * the panel.
 */
@NullMarked
package cistern.fluid;

import org.jspecify.annotations.NullMarked;
