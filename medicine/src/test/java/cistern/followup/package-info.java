/** Tests of repeat punctures; every person in them is invented. */
@NullMarked
package cistern.followup;

import org.jspecify.annotations.NullMarked;
