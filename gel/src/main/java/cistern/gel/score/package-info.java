/** Readings held against what is true of a gel. May use lanes and reading. */
@NullMarked
package cistern.gel.score;

import org.jspecify.annotations.NullMarked;
