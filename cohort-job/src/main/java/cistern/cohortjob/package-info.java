/**
 * The cohort on a distributed engine: reads parts of a large input with the same functions as a
 * single work-up, and merges what they give. Uses the medicine, exchange, report and the facts of
 * the gel reader.
 */
@NullMarked
package cistern.cohortjob;

import org.jspecify.annotations.NullMarked;
