/**
 * What the clinic's program takes as given: lengths, times and counts, from a table of facts. Uses
 * facts.
 */
@NullMarked
package cistern.clinic.setting;

import org.jspecify.annotations.NullMarked;
