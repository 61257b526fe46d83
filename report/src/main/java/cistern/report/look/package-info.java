/**
 * The one set of tokens behind screens, pages, figures and print: what each colour means, in light
 * and in dark; and the facts that figures and pages need beyond those of the medicine. Uses facts.
 */
@NullMarked
package cistern.report.look;

import org.jspecify.annotations.NullMarked;
