/** Tests of the package of the same name. */
@NullMarked
package cistern.gel.lanes;

import org.jspecify.annotations.NullMarked;
