/** Repeat punctures of one person as JSON, as a paper and as a time line. Uses the followup. */
@NullMarked
package cistern.report.compare;

import org.jspecify.annotations.NullMarked;
