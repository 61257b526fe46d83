/** The local policy file: which facts a clinic has decided for itself. Uses JSON, units, facts. */
@NullMarked
package cistern.exchange.policy;

import org.jspecify.annotations.NullMarked;
