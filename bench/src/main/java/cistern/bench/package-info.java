/**
 * How fast the product is, measured with JMH, and the same work done by other means beside it. Uses
 * the medicine; nothing uses it.
 */
@NullMarked
package cistern.bench;

import org.jspecify.annotations.NullMarked;
