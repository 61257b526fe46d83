/**
 * Any input that holds work-ups or a laboratory's report, told apart by its content and made into
 * work-ups that are judged like any other. The readers of the carriers are loaded when one comes.
 * May use every other package of the exchange.
 */
@NullMarked
package cistern.exchange.intake;

import org.jspecify.annotations.NullMarked;
