/**
 * The screens for coming in and going out, and for one's own password. Uses accounts and the web.
 */
@NullMarked
package cistern.clinic.entrance;

import org.jspecify.annotations.NullMarked;
