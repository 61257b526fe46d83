package cistern.measurement;

/** A value as the laboratory reports it: a number, or only a bound. */
public sealed interface ReportedValue {

  /** All values that the report allows; a bound is never replaced by a number. */
  Interval interval();

  /** Whether only a bound is known. */
  default boolean isCensored() {
    return !(this instanceof Exact);
  }

  /**
   * A number.
   *
   * @param value finite, not negative
   */
  record Exact(double value) implements ReportedValue {
    /** Checks the range. */
    public Exact {
      check(value);
    }

    @Override
    public Interval interval() {
      return Interval.of(value);
    }
  }

  /**
   * Below the limit of quantitation.
   *
   * @param limit finite, positive
   */
  record Below(double limit) implements ReportedValue {
    /** Checks the range. */
    public Below {
      check(limit);
    }

    @Override
    public Interval interval() {
      return new Interval(0, limit, true);
    }
  }

  /**
   * Above the measuring range.
   *
   * @param limit finite, not negative
   */
  record Above(double limit) implements ReportedValue {
    /** Checks the range. */
    public Above {
      check(limit);
    }

    @Override
    public Interval interval() {
      return new Interval(limit, Double.POSITIVE_INFINITY, true);
    }
  }

  private static void check(double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("a reported value is finite and not negative");
    }
  }
}
