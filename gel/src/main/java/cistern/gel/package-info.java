/**
 * Reads the picture of a focusing gel: a picture in, a band reading out. It composes the packages
 * below and may use the facts and the band words of the medicine.
 */
@NullMarked
package cistern.gel;

import org.jspecify.annotations.NullMarked;
