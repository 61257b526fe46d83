/** Invented focusing gels with their ground truth, made to a forward model of our own. */
@org.jspecify.annotations.NullMarked
package cistern.gel.synthetic;
