/**
 * The house checks itself: which way its arrows run, what its rooms are called, what may not happen
 * inside. Every rule has a fixture under {@code broken} that breaks it, so that a rule which never
 * fails is found out. Sees everything; nothing sees it.
 */
@NullMarked
package cistern.architecture;

import org.jspecify.annotations.NullMarked;
