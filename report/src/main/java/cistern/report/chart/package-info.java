/**
 * The comment that a specialist pastes in the chart: one paragraph of plain text. Uses findings,
 * statements and wording.
 */
@NullMarked
package cistern.report.chart;

import org.jspecify.annotations.NullMarked;
