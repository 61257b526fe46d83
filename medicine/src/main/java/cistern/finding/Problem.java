package cistern.finding;

import cistern.fact.Grounds;

/** Something wrong with an input that can still be read: shown, never repaired. */
public interface Problem {

  /** The name in files. */
  String code();

  /** Where in the work-up it is, as a JSON path with 0-based indices; empty for the whole. */
  String place();

  /** What is wrong and what to do, for a doctor. */
  String text();

  /** Whether it is about how the file is written and says nothing of the person's results. */
  default boolean isOfWriting() {
    return false;
  }

  /** What the rule behind it rests on. */
  default Grounds grounds() {
    return Grounds.MEASURED;
  }
}
