/**
 * A block of results copied from a spreadsheet or a laboratory's report: what is understood, and
 * every line that is not. Uses analytes and units.
 */
@NullMarked
package cistern.clinic.paste;

import org.jspecify.annotations.NullMarked;
