/** Tests of the running application. */
@NullMarked
package cistern.clinic.launch;

import org.jspecify.annotations.NullMarked;
