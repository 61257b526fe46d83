/** Tests of the running application. */
@NullMarked
package cistern.clinic.door;

import org.jspecify.annotations.NullMarked;
