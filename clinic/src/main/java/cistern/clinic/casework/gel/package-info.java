/**
 * The screen of a gel: its picture with lanes and bands over it, each band kept or struck, and the
 * reading confirmed by name. Uses the frame of a case, the kept gels and the gel reader.
 */
@NullMarked
package cistern.clinic.casework.gel;

import org.jspecify.annotations.NullMarked;
