/** The CSF lane beside the serum lane: counterparts, counts, ladders. May use bands and reading. */
@NullMarked
package cistern.gel.pairing;

import org.jspecify.annotations.NullMarked;
