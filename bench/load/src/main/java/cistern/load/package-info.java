/** Many people at the clinic at once: measured by hand, no part of any build. */
@NullMarked
package cistern.load;

import org.jspecify.annotations.NullMarked;
