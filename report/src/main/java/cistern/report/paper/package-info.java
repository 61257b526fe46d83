/**
 * A document for people, written once and set as text or HTML: sections of sentences, lists,
 * tables, forms and figures, each with what it rests on. Knows nothing of punctures.
 */
@NullMarked
package cistern.report.paper;

import org.jspecify.annotations.NullMarked;
