@NullMarked
package cistern.report.chart;

import org.jspecify.annotations.NullMarked;
