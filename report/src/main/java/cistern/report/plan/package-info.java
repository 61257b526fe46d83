/**
 * The plan for a puncture and what follows, as JSON and as papers for clinician and patient. Uses
 * the puncture and the paper.
 */
@NullMarked
package cistern.report.plan;

import org.jspecify.annotations.NullMarked;
