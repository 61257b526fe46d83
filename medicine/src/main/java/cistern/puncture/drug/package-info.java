/**
 * Names of drugs as people type them, and the doses beside them. Which drugs there are, and what
 * they are called in which country, is a table of facts. Uses facts.
 */
@NullMarked
package cistern.puncture.drug;

import org.jspecify.annotations.NullMarked;
