/**
 * Pictures of gels and what the program read in them, kept for good. Uses the store, the audit
 * trail and the gel reader.
 */
@NullMarked
package cistern.clinic.gel;

import org.jspecify.annotations.NullMarked;
