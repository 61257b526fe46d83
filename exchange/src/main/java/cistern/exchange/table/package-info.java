/**
 * Tables: CSV, TSV and workbooks, and reports whose text was copied out of a page; read by their
 * headings or by a mapping that a person confirmed, and written as one row a work-up. May use the
 * lab, xml and json packages.
 */
@NullMarked
package cistern.exchange.table;

import org.jspecify.annotations.NullMarked;
