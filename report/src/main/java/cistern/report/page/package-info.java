/**
 * Pages that people read: for the clinician, the referrer and the person. Each is one body of
 * markup that a screen and a printer share. Uses figures, wording, tokens and markup.
 */
@NullMarked
package cistern.report.page;

import org.jspecify.annotations.NullMarked;
