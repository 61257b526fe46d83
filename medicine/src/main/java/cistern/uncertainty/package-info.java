/**
 * What measurement error alone leaves open: the 95 % interval of every finding, the chance that it
 * lies above its limit, and how often a verdict would change if everything were measured again. All
 * by quadrature, nothing by chance. Uses the panel and the published rules.
 */
@NullMarked
package cistern.uncertainty;

import org.jspecify.annotations.NullMarked;
