/** Reading XML without ever resolving an entity or a document type. Uses the Java base library. */
@NullMarked
package cistern.exchange.xml;

import org.jspecify.annotations.NullMarked;
