package cistern.gel.image;

/** Whether stained protein takes light away or gives it. */
public enum Polarity {
  /** Bands darker than the membrane. */
  DARK_ON_LIGHT,
  /** Bands lighter than the membrane: luminescence, or a picture turned to its negative. */
  LIGHT_ON_DARK
}
