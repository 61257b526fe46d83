/**
 * A case read and interpreted: where it stands, what is missing, what is to be done today. Uses
 * cases, the work-up file and the medicine.
 */
@NullMarked
package cistern.clinic.status;

import org.jspecify.annotations.NullMarked;
