/**
 * Values, limits and intervals as a document writes them, the same in tables, labels and sentences.
 * Uses findings.
 */
@NullMarked
package cistern.report.wording;

import org.jspecify.annotations.NullMarked;
