/** Tests of the package of the same name. */
@NullMarked
package cistern.gel.score;

import org.jspecify.annotations.NullMarked;
