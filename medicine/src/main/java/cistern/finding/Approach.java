package cistern.finding;

/** From which side a value comes to the point where it is judged: an open end is never reached. */
enum Approach {
  /** The value itself. */
  EXACT,
  /** The open lower end of an interval: all values lie above it. */
  FROM_ABOVE,
  /** The open upper end of an interval: all values lie below it. */
  FROM_BELOW
}
