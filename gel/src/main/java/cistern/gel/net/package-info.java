/** The two nets and the picture as they see it. May use image. */
@NullMarked
package cistern.gel.net;

import org.jspecify.annotations.NullMarked;
