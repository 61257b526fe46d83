/** Tests of the kept gels on both engines. */
@NullMarked
package cistern.clinic.gel;

import org.jspecify.annotations.NullMarked;
