/** Tests of the package of the same name. */
@NullMarked
package cistern.gel.net;

import org.jspecify.annotations.NullMarked;
