/**
 * What a laboratory reports: specimen, analyte, value in the canonical unit, censoring,
 * imprecision. Uses nothing but the Java base library.
 */
@NullMarked
package cistern.measurement;

import org.jspecify.annotations.NullMarked;
