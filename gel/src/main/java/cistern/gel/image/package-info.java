/**
 * Pictures: files of whatever origin decoded into one channel, and its relative optical density.
 * May use the facts only.
 */
@NullMarked
package cistern.gel.image;

import org.jspecify.annotations.NullMarked;
