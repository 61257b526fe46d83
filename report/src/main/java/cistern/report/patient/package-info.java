/**
 * Papers for the person: before and after the puncture, and what was found. Every sentence stands
 * in one catalogue a language, {@code patient_LANGUAGE.properties}; a further language needs no
 * Java. Uses papers and figures.
 */
@NullMarked
package cistern.report.patient;

import org.jspecify.annotations.NullMarked;
