package cistern.report.figure;

import cistern.finding.Findings;

/**
 * A puncture before the one that a figure is about.
 *
 * @param number its label in the figure, short
 * @param findings what it showed
 */
public record EarlierPuncture(String number, Findings findings) {}
