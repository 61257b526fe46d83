/** How well the clinic does: all its punctures together, as a cohort. */
@NullMarked
package cistern.clinic.figures;

import org.jspecify.annotations.NullMarked;
