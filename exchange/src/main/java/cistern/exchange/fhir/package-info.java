/**
 * Laboratory reports of FHIR R4 in JSON and XML, read and written, with the document form of the
 * European laboratory report (hl7.fhir.eu.laboratory 2.0.0). May use the lab and json packages.
 */
@NullMarked
package cistern.exchange.fhir;

import org.jspecify.annotations.NullMarked;
