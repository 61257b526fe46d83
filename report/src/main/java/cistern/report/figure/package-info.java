/**
 * Figures as pure functions from findings to SVG, the same for screen and print: direct labels, a
 * mark of its own shape for every verdict, a title that says the finding, a description with the
 * numbers and a table of the same data. Uses findings, barrier limits, tokens and markup.
 */
@NullMarked
package cistern.report.figure;

import org.jspecify.annotations.NullMarked;
