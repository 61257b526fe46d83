/** Tests of the package of the same name. */
@NullMarked
package cistern.gel.membrane;

import org.jspecify.annotations.NullMarked;
