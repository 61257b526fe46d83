/** Punctures made up for tests, and a way to ask what was written about them. */
@NullMarked
package cistern.report;

import org.jspecify.annotations.NullMarked;
