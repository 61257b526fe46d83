@NullMarked
package cistern.report.patient;

import org.jspecify.annotations.NullMarked;
