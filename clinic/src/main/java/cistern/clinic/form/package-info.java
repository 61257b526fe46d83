/**
 * What can be typed into a case: its fields, how a work-up file shows them, and how two people's
 * typing is brought together. Uses the JSON tree and the words of the medicine.
 */
@NullMarked
package cistern.clinic.form;

import org.jspecify.annotations.NullMarked;
