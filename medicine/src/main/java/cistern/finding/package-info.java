/**
 * The shape of an answer: a code, a value or its bounds, a limit, a verdict, and what it rests on.
 * Uses facts and measurements.
 */
@NullMarked
package cistern.finding;

import org.jspecify.annotations.NullMarked;
