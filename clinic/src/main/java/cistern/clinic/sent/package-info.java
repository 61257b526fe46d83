/**
 * What a laboratory sent: read, held against a case, and put into it when somebody has looked. Uses
 * the readers of the exchange and what a case holds.
 */
@NullMarked
package cistern.clinic.sent;

import org.jspecify.annotations.NullMarked;
