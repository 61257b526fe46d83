/** The CSF lane beside the serum lane: alignment, counterparts, counts. May use bands. */
@NullMarked
package cistern.gel.pairing;

import org.jspecify.annotations.NullMarked;
