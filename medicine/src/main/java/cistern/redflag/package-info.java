/**
 * What argues against multiple sclerosis, one type per red flag: each prompts a thought and rules
 * nothing out. Uses facts, findings, the panel, the bands and the names of the diseases.
 */
@NullMarked
package cistern.redflag;

import org.jspecify.annotations.NullMarked;
