/** The screens of all cases: the day and the list. Uses what stands below a case. */
@NullMarked
package cistern.clinic.worklist;

import org.jspecify.annotations.NullMarked;
