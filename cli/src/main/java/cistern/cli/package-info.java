/**
 * The commands of the launcher: arguments in, exit code out; all the medicine lies elsewhere. Uses
 * everything.
 */
@NullMarked
package cistern.cli;

import org.jspecify.annotations.NullMarked;
