/**
 * Result messages of HL7 v2.3 to v2.8 (ORU^R01 and its profiles), read, and written as v2.5.1. May
 * use the lab and json packages.
 */
@NullMarked
package cistern.exchange.hl7v2;

import org.jspecify.annotations.NullMarked;
