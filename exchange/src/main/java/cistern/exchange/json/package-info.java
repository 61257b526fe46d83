/**
 * Reading JSON with places: a tree that keeps every literal as written, typed access that notes
 * every problem with its JSON path, and writing the tree again. May use jackson-core and the
 * measurement, fact and finding packages of the medicine.
 */
@NullMarked
package cistern.exchange.json;

import org.jspecify.annotations.NullMarked;
