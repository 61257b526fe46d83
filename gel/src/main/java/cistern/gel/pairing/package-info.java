/** The CSF lane beside the serum lane: counterparts, counts, ladders. May use bands. */
@NullMarked
package cistern.gel.pairing;

import org.jspecify.annotations.NullMarked;
