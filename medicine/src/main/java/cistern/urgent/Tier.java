package cistern.urgent;

/** How soon somebody must be told, soonest first (a rule of this project). */
public enum Tier {
  /** Now, by telephone. */
  T0,
  /** On the same day. */
  T1,
  /** Before anybody signs a verdict. */
  T2
}
