package cistern.fact;

/** The value of a fact: a number in the fact's unit, the name of a rule, or a unit to write in. */
public sealed interface FactValue {

  /** The value as it is printed. */
  String toText();

  /**
   * A number.
   *
   * @param value finite
   */
  record Figure(double value) implements FactValue {
    /** Checks that the number is finite. */
    public Figure {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("a fact must be finite");
      }
    }

    @Override
    public String toText() {
      return value == Math.rint(value) && Math.abs(value) < 1e15
          ? Long.toString((long) value)
          : Double.toString(value);
    }
  }

  /**
   * The name of a rule or the text of a citation.
   *
   * @param value not blank
   */
  record Word(String value) implements FactValue {
    @Override
    public String toText() {
      return value;
    }
  }

  /**
   * A unit in which a house writes what the medicine holds in one of its own.
   *
   * @param written as the house writes it
   * @param size how much of the medicine's unit one of it is; where one counts mass and the other
   *     substance, before the molar mass (g/mol) comes in
   * @param isThroughMolarMass whether one counts mass and the other substance
   */
  record Unit(String written, double size, boolean isThroughMolarMass) implements FactValue {
    /** Checks that the size is a positive number. */
    public Unit {
      if (!(size > 0) || Double.isInfinite(size)) {
        throw new IllegalArgumentException("a unit has a size");
      }
    }

    @Override
    public String toText() {
      return written;
    }
  }

  /** A number where the text is one, else a word. */
  static FactValue parse(String text) {
    try {
      return new Figure(Double.parseDouble(text));
    } catch (NumberFormatException notANumber) {
      return new Word(text);
    }
  }
}
