/**
 * What the fluid itself shows: cells, protein, glucose, lactate and myelin basic protein. Uses the
 * panel.
 */
@NullMarked
package cistern.fluid;

import org.jspecify.annotations.NullMarked;
