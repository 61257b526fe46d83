package cistern.criteria;

/**
 * Every item settled one way, for one presentation: two bits of level per item.
 *
 * @param presentation a known one
 * @param levels the level of each item, 0 (no) to its top
 */
record Completion(Presentation presentation, long levels) {

  private static final int BITS = 2;

  /** All levels of an item. */
  static final int MASK = 3;

  /** A level in the place of its item. */
  static long placed(Item item, int level) {
    return (long) level << place(item);
  }

  /** The level of an item in some levels. */
  static int level(long levels, Item item) {
    return (int) ((levels >>> place(item)) & MASK);
  }

  /** Whether an item is yes; for a count, two or more. */
  boolean isYes(Item item) {
    return level(levels, item) == item.top();
  }

  /** Whether a count is exactly one. */
  boolean isOne(Item item) {
    return level(levels, item) == 1;
  }

  /** How many of some items are yes. */
  int count(Item... items) {
    int yes = 0;
    for (Item item : items) {
      yes += isYes(item) ? 1 : 0;
    }
    return yes;
  }

  /** The items stand in the order of their declaration. */
  @SuppressWarnings("EnumOrdinal") // never stored: levels live as long as one evaluation
  private static int place(Item item) {
    return BITS * item.ordinal();
  }
}
