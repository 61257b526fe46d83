/**
 * A cohort on paper and in tables: what a department presents, and the rows behind it. Uses the
 * cohort of the medicine, the paper and the JSON writer.
 */
@NullMarked
package cistern.report.cohort;

import org.jspecify.annotations.NullMarked;
