/**
 * What a specialist would write: the answer first, then the barrier, the weakest link, and what to
 * do next, one type a statement. Uses findings, bands, panel and conflicts.
 */
@NullMarked
package cistern.statement;

import org.jspecify.annotations.NullMarked;
