package cistern.criteria;

import cistern.measurement.Answer;

/**
 * What is known of every item for one presentation: the lowest and the highest consistent level of
 * each.
 *
 * @param presentation a known one
 * @param low the lowest levels
 * @param high the highest levels
 */
record Known(Presentation presentation, long low, long high) {

  /** What evidence and fluid leave open, made consistent; the evidence does not contradict. */
  static Known of(Evidence evidence, Presentation presentation, Answer bands, Answer csf) {
    Known known =
        new Known(presentation, 0, 0)
            .withAttacks(evidence.attacks())
            .with(
                Item.OBJECTIVE_LESIONS,
                evidence.objectiveLesions().lowLevel(),
                evidence.objectiveLesions().highLevel())
            .with(Item.BANDS, bands)
            .with(Item.CSF_POSITIVE, csf);
    for (Item item : Item.values()) {
      if (item.kind() == Item.Kind.ANSWER || item.kind() == Item.Kind.LESION) {
        known = known.with(item, evidence.answer(item));
      }
    }
    return known.withCord();
  }

  private Known withAttacks(Count attacks) {
    return switch (presentation) {
      case ATTACK ->
          with(Item.ATTACKS, Math.max(1, attacks.lowLevel()), Math.max(1, attacks.highLevel()));
      case PROGRESSION, NONE -> with(Item.ATTACKS, 0, 0);
      case NON_SPECIFIC, ATYPICAL, UNKNOWN ->
          with(Item.ATTACKS, attacks.lowLevel(), attacks.highLevel());
    };
  }

  private Known withCord() {
    boolean isTwoSure = Completion.level(low, Item.CORD_LESIONS_TWO_OR_MORE) == 1;
    boolean isNoneSure = Completion.level(high, Item.SPINAL_CORD) == 0;
    if (isTwoSure) {
      return with(Item.SPINAL_CORD, 1, 1);
    }
    return isNoneSure ? with(Item.CORD_LESIONS_TWO_OR_MORE, 0, 0) : this;
  }

  private Known with(Item item, Answer answer) {
    return with(item, answer == Answer.YES ? 1 : 0, answer == Answer.NO ? 0 : 1);
  }

  /** The same with other ends for one item. */
  Known with(Item item, int lowest, int highest) {
    long clear = ~Completion.placed(item, 3);
    return new Known(
        presentation,
        (low & clear) | Completion.placed(item, lowest),
        (high & clear) | Completion.placed(item, highest));
  }

  /** The lowest level of an item. */
  int lowest(Item item) {
    return Completion.level(low, item);
  }

  /** The highest level of an item. */
  int highest(Item item) {
    return Completion.level(high, item);
  }

  /** Whether only one level is consistent. */
  boolean isSettled(Item item) {
    return lowest(item) == highest(item);
  }
}
