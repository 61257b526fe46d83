/**
 * What must be said first: the catalogue of urgent patterns in the fluid, what stops a verdict, and
 * what to think of. Uses the bedside, the panel, its findings and the bands.
 */
@NullMarked
package cistern.urgent;

import org.jspecify.annotations.NullMarked;
