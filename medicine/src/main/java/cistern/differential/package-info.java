/**
 * What else it could be: published counts as evidence, weighed once, with their spread. Uses facts,
 * measurements, findings, the panel, barrier, fluid and bands; knows nothing of the criteria.
 */
@NullMarked
package cistern.differential;

import org.jspecify.annotations.NullMarked;
