/**
 * The one set of tokens behind screens, pages, figures and print: what each colour means, in light
 * and in dark. Uses nothing but {@code java.base}.
 */
@NullMarked
package cistern.report.look;

import org.jspecify.annotations.NullMarked;
