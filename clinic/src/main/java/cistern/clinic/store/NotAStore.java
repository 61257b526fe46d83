package cistern.clinic.store;

/** Where a store was said to be, there is none that this program can use; why, for a person. */
public final class NotAStore extends RuntimeException {

  private static final long serialVersionUID = 1L;

  NotAStore(String why) {
    super(why);
  }
}
