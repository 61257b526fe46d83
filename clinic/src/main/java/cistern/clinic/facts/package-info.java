/** Every number in force, for whoever is signed in. Uses the facts and the settings. */
@NullMarked
package cistern.clinic.facts;

import org.jspecify.annotations.NullMarked;
