/**
 * A work-up without what names its person: an allow-list of fields, pseudonyms and shifted dates
 * under the secret of a site, and how many persons share a group. May use the json, lab and table
 * packages and the medicine.
 */
@NullMarked
package cistern.exchange.deidentified;

import org.jspecify.annotations.NullMarked;
