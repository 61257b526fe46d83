/**
 * An interpretation and the facts as JSON, field by field as the format promises. Uses the medicine
 * and a streaming writer.
 */
@NullMarked
package cistern.report.json;

import org.jspecify.annotations.NullMarked;
