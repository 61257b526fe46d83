/**
 * The published criteria for multiple sclerosis, one class per edition, evaluated with yes, no and
 * unknown. Uses facts, measurements, findings, the panel and the bands; knows nothing of gels.
 */
@NullMarked
package cistern.criteria;

import org.jspecify.annotations.NullMarked;
