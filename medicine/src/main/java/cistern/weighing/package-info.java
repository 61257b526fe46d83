/**
 * Criteria, differential and red flags together: what would settle it, by what it tells and what it
 * costs the person. Uses them and everything that they use.
 */
@NullMarked
package cistern.weighing;

import org.jspecify.annotations.NullMarked;
