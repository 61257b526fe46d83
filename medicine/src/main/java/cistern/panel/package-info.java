/**
 * The paired panel: CSF and serum results of one puncture, and everything that can be wrong with a
 * pair, one type a trouble. Uses facts, measurements and findings.
 */
@NullMarked
package cistern.panel;

import org.jspecify.annotations.NullMarked;
