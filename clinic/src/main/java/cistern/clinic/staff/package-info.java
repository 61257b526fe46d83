/** The screens where an administrator makes and closes accounts. Uses accounts and the web. */
@NullMarked
package cistern.clinic.staff;

import org.jspecify.annotations.NullMarked;
