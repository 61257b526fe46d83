/**
 * Where cases are kept: one portable SQL on SQLite or PostgreSQL. Uses the settings and a driver of
 * each engine.
 */
@NullMarked
package cistern.clinic.store;

import org.jspecify.annotations.NullMarked;
