package cistern.puncture.procedure;

/**
 * What a work-up says of the procedure.
 *
 * @param before what is known beforehand
 * @param done what was done
 * @param after what followed
 */
public record Procedure(Before before, Done done, After after) {

  /** Nothing said. */
  public static final Procedure UNKNOWN =
      new Procedure(Before.UNKNOWN, Done.UNKNOWN, After.UNKNOWN);
}
