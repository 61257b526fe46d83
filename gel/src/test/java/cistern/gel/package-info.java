/** Tests of the package of the same name. */
@NullMarked
package cistern.gel;

import org.jspecify.annotations.NullMarked;
