/**
 * What was checked from outside, and how it came out: written down by the tests that checked it,
 * gathered into {@code docs/validation.md}. Seen by tests only; may use java.base.
 */
@NullMarked
package cistern.checks;

import org.jspecify.annotations.NullMarked;
