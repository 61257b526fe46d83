/**
 * Oligoclonal bands: what a laboratory, a person or our reader says about a gel, and what follows
 * from it. Uses facts and findings.
 */
@NullMarked
package cistern.bands;

import org.jspecify.annotations.NullMarked;
