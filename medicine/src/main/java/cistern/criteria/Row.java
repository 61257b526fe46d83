package cistern.criteria;

import cistern.fact.Grounds;
import java.util.function.Predicate;

/**
 * One row of a published table of criteria.
 *
 * @param id the row, {@code 17-5}
 * @param condition whether it holds; that there is no better explanation is asked of every row
 *     before
 * @param isReadingFluid whether it reads a CSF marker
 * @param grounds where the row was read, and how well
 */
record Row(String id, Predicate<Completion> condition, boolean isReadingFluid, Grounds grounds) {}
