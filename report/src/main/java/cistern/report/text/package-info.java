/** An interpretation and the facts as plain text for a terminal or a note. Uses the medicine. */
@NullMarked
package cistern.report.text;

import org.jspecify.annotations.NullMarked;
