/** Tests of papers about invented punctures. */
@NullMarked
package cistern.report.compare;

import org.jspecify.annotations.NullMarked;
