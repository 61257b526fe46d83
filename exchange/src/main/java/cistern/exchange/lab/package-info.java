/**
 * A laboratory's report as it comes, whatever carries it, and how it becomes a work-up: what a
 * code, a name and a specimen mean, how numbers and units are written, which draw a result belongs
 * to. Everything that is not understood is kept and listed. May use the json and ucum packages and
 * the measurement, fact and finding packages of the medicine.
 */
@NullMarked
package cistern.exchange.lab;

import org.jspecify.annotations.NullMarked;
