package cistern.urgent;

import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.finding.UnitProfile;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * When a rule holds: yes, no, or unknown while an input is missing. An unknown input is never no.
 *
 * <pre>{@code
 * any(under(GLUCOSE, "urgent.bacterial.glucose.under"), all(FEVER, from(LACTATE, "…")))
 * }</pre>
 */
sealed interface Trigger {

  /** Whether it holds. */
  Answer answer(Observed observed);

  /** Why it holds, where it does. */
  List<Reason> reasons(Observed observed);

  /** What is missing, where it is unknown. */
  List<String> missing(Observed observed);

  /** Strictly less than a fact. */
  static Trigger under(Quantity quantity, String key) {
    return new Not(new Compared(quantity, key, true), quantity);
  }

  /** A fact or less. */
  static Trigger upTo(Quantity quantity, String key) {
    return new Not(new Compared(quantity, key, false), quantity);
  }

  /** A fact or more. */
  static Trigger from(Quantity quantity, String key) {
    return new Compared(quantity, key, true);
  }

  /** Strictly more than a fact. */
  static Trigger over(Quantity quantity, String key) {
    return new Compared(quantity, key, false);
  }

  /** Something that is known in words. */
  static Trigger stated(String term, String finding, Function<Observed, Answer> answer) {
    return new Stated(term, finding, answer);
  }

  static Trigger any(Trigger... parts) {
    return new AtLeast(1, List.of(parts));
  }

  static Trigger all(Trigger... parts) {
    return new AtLeast(parts.length, List.of(parts));
  }

  static Trigger atLeast(int number, Trigger... parts) {
    return new AtLeast(number, List.of(parts));
  }

  /** Holds unless the other is known to hold: the unknown does not block. */
  static Trigger unless(Trigger other) {
    return new Unless(other);
  }

  /** Where the first is yes the second, else the third; an unknown first counts as no. */
  static Trigger where(Function<Observed, Boolean> condition, Trigger then, Trigger otherwise) {
    return new Where(condition, then, otherwise);
  }

  /** A number against a fact. */
  record Compared(Quantity quantity, String key, boolean isInclusive) implements Trigger {

    @Override
    public Answer answer(Observed observed) {
      Optional<Interval> value = observed.value(quantity);
      if (value.isEmpty()) {
        return Answer.UNKNOWN;
      }
      Threshold cut = new Threshold(observed.facts().number(key), isInclusive);
      Verdict verdict = Limits.upper(cut).judge(value.get());
      if (verdict == Verdict.ABOVE) {
        return Answer.YES;
      }
      return verdict == Verdict.WITHIN ? Answer.NO : Answer.UNKNOWN;
    }

    @Override
    public List<Reason> reasons(Observed observed) {
      return observed.value(quantity).stream().map(v -> reason(v, observed)).toList();
    }

    private Reason reason(Interval value, Observed observed) {
      double shown = Double.isInfinite(value.upper()) ? value.lower() : value.upper();
      UnitProfile units = UnitProfile.of(observed.facts());
      String text = quantity.toText(shown, observed.facts().number(key), units);
      boolean isOpen = value.censored();
      String sign = Double.isInfinite(value.upper()) ? "over " : "under ";
      return new Reason(isOpen ? sign + text : text, quantity.finding());
    }

    @Override
    public List<String> missing(Observed observed) {
      return answer(observed).isKnown() ? List.of() : List.of(quantity.term());
    }
  }

  /** The opposite of a comparison. */
  record Not(Compared other, Quantity quantity) implements Trigger {

    @Override
    public Answer answer(Observed observed) {
      return switch (other.answer(observed)) {
        case YES -> Answer.NO;
        case NO -> Answer.YES;
        case UNKNOWN -> Answer.UNKNOWN;
      };
    }

    @Override
    public List<Reason> reasons(Observed observed) {
      return other.reasons(observed);
    }

    @Override
    public List<String> missing(Observed observed) {
      return other.missing(observed);
    }
  }

  /** Something known in words. */
  record Stated(String term, String finding, Function<Observed, Answer> said) implements Trigger {

    @Override
    public Answer answer(Observed observed) {
      return said.apply(observed);
    }

    @Override
    public List<Reason> reasons(Observed observed) {
      return term.isEmpty() ? List.of() : List.of(new Reason(term, finding));
    }

    @Override
    public List<String> missing(Observed observed) {
      return answer(observed).isKnown() || term.isEmpty() ? List.of() : List.of(term);
    }
  }

  /** So many of several parts. */
  record AtLeast(int number, List<Trigger> parts) implements Trigger {

    @Override
    public Answer answer(Observed observed) {
      int yes = 0;
      int no = 0;
      for (Trigger part : parts) {
        switch (part.answer(observed)) {
          case YES -> yes++;
          case UNKNOWN -> {}
          case NO -> no++;
        }
        if (yes >= number) {
          return Answer.YES;
        }
        if (parts.size() - no < number) {
          return Answer.NO;
        }
      }
      return Answer.UNKNOWN;
    }

    /** How many parts hold. */
    long count(Observed observed) {
      return parts.stream().filter(p -> p.answer(observed).isYes()).count();
    }

    @Override
    public List<Reason> reasons(Observed observed) {
      return of(Answer.YES, observed)
          .flatMap(p -> p.reasons(observed).stream())
          .distinct()
          .toList();
    }

    @Override
    public List<String> missing(Observed observed) {
      return answer(observed).isKnown()
          ? List.of()
          : of(Answer.UNKNOWN, observed)
              .flatMap(p -> p.missing(observed).stream())
              .distinct()
              .toList();
    }

    private Stream<Trigger> of(Answer answer, Observed observed) {
      return parts.stream().filter(p -> p.answer(observed) == answer);
    }
  }

  /** An exclusion. */
  record Unless(Trigger other) implements Trigger {

    @Override
    public Answer answer(Observed observed) {
      return other.answer(observed).isYes() ? Answer.NO : Answer.YES;
    }

    @Override
    public List<Reason> reasons(Observed observed) {
      return List.of();
    }

    @Override
    public List<String> missing(Observed observed) {
      return List.of();
    }
  }

  /** One of two, by a condition that is always known. */
  record Where(Function<Observed, Boolean> condition, Trigger then, Trigger otherwise)
      implements Trigger {

    private Trigger chosen(Observed observed) {
      return condition.apply(observed) ? then : otherwise;
    }

    @Override
    public Answer answer(Observed observed) {
      return chosen(observed).answer(observed);
    }

    @Override
    public List<Reason> reasons(Observed observed) {
      return chosen(observed).reasons(observed);
    }

    @Override
    public List<String> missing(Observed observed) {
      return chosen(observed).missing(observed);
    }
  }
}
