/**
 * Elements and texts of a page or a figure, written as markup that is at once XML and HTML.
 * Escaping happens here and nowhere else. Uses nothing but {@code java.base}.
 */
@NullMarked
package cistern.report.markup;

import org.jspecify.annotations.NullMarked;
