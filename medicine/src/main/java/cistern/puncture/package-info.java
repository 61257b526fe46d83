/**
 * The lumbar puncture: whether it would matter, what to look at before, how to do it, what to send,
 * and what follows. Its rooms stand on facts, measurements and findings; this one composes them.
 */
@NullMarked
package cistern.puncture;

import org.jspecify.annotations.NullMarked;
