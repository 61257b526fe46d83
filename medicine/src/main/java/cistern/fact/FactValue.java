package cistern.fact;

/** The value of a fact: a number in the fact's unit, or the name of a rule. */
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

  /** A number where the text is one, else a word. */
  static FactValue parse(String text) {
    try {
      return new Figure(Double.parseDouble(text));
    } catch (NumberFormatException notANumber) {
      return new Word(text);
    }
  }
}
