/**
 * Facts of the trade as data: every constant, limit and count with its unit, source and status, and
 * the local policy that may change them. Uses nothing but the Java base library.
 */
@NullMarked
package cistern.fact;

import org.jspecify.annotations.NullMarked;
