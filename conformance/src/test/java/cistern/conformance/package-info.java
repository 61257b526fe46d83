/**
 * What other people's programs say of the exchange: the schemas and the validator of FHIR R4 on
 * every form of a bundle that goes out, and a fuzzer on every reader. Data are invented.
 */
@NullMarked
package cistern.conformance;

import org.jspecify.annotations.NullMarked;
