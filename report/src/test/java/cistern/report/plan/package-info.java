/** Tests of papers about invented punctures. */
@NullMarked
package cistern.report.plan;

import org.jspecify.annotations.NullMarked;
