/**
 * Two ways of asking the same question that disagree: which, why, and on which to lean, one type a
 * conflict. Uses findings, bands and the barrier's curves.
 */
@NullMarked
package cistern.conflict;

import org.jspecify.annotations.NullMarked;
