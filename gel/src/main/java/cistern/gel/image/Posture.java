package cistern.gel.image;

/** How the lanes run in the picture. */
public enum Posture {
  /** From top to bottom. */
  UPRIGHT,
  /** From left to right: the gel lies on its side. */
  ACROSS
}
