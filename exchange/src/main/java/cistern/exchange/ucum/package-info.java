/**
 * Units as UCUM writes them: whether a unit is one, what it measures, and exact conversion into the
 * units of the medicine. May use the UCUM library and the measurement and fact packages of the
 * medicine.
 */
@NullMarked
package cistern.exchange.ucum;

import org.jspecify.annotations.NullMarked;
