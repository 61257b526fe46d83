@NullMarked
package cistern.report.paper;

import org.jspecify.annotations.NullMarked;
