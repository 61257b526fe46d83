/**
 * The analysis of one puncture: its panel, every quantity derived from it, and its bands, together.
 * What compares, weighs and writes starts here. Uses panel, bands and what they use.
 */
@NullMarked
package cistern.analysis;

import org.jspecify.annotations.NullMarked;
