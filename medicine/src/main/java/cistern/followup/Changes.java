package cistern.followup;

import cistern.analysis.Puncture;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.followup.Change.Verdict;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The change of every value between two punctures against its limit of change. */
final class Changes {

  private static final String Z = "change.z";

  private final Facts facts;

  Changes(Facts facts) {
    this.facts = facts;
  }

  /** Every value that stands in at least one of the two. */
  List<Change> check(Comparability pair) {
    List<Change> changes = new ArrayList<>();
    for (ComparedQuantity quantity : ComparedQuantity.all()) {
      if (quantity.value(pair.earlier()).isPresent() || quantity.value(pair.later()).isPresent()) {
        changes.add(change(quantity, pair));
      }
    }
    return changes;
  }

  private Change change(ComparedQuantity quantity, Comparability pair) {
    Optional<Interval> from = quantity.value(pair.earlier());
    Optional<Interval> to = quantity.value(pair.later());
    Optional<String> obstacle = pair.obstacle(quantity).or(() -> obstacle(from, to));
    Optional<ChangeLimits> limits =
        obstacle.isPresent() ? Optional.empty() : limits(quantity, pair);
    String note =
        obstacle.orElseGet(
            () ->
                limits.isEmpty()
                    ? withoutLimit(quantity)
                    : String.join("; ", pair.doubts(quantity)));
    return new Change(
        quantity.code(),
        quantity.term(),
        from,
        to,
        limits,
        limits.map(l -> verdict(l, from, to)).orElse(Verdict.NOT_COMPARABLE),
        note,
        limits.isPresent() ? grounds(quantity, pair) : Grounds.MEASURED);
  }

  private static Optional<String> obstacle(Optional<Interval> from, Optional<Interval> to) {
    if (from.isEmpty() || to.isEmpty()) {
      return Optional.of("there is a value at one puncture only");
    }
    if (!from.get().isExact() || !to.get().isExact()) {
      return Optional.of("only a bound is known at one puncture, which has no limit of change");
    }
    return from.get().lower() > 0 && to.get().lower() > 0
        ? Optional.empty()
        : Optional.of("a value that is not positive has no relative change");
  }

  private static Verdict verdict(
      ChangeLimits limits, Optional<Interval> from, Optional<Interval> to) {
    double relative = to.orElseThrow().exactly() / from.orElseThrow().exactly() - 1;
    return limits.isPassedBy(relative) ? Verdict.SIGNIFICANT : Verdict.WITHIN_VARIATION;
  }

  private Optional<ChangeLimits> limits(ComparedQuantity quantity, Comparability pair) {
    OptionalDouble first = logVariance(quantity, pair.earlier());
    OptionalDouble second = logVariance(quantity, pair.later());
    if (first.isEmpty() || second.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        ChangeLimits.of(facts.number(Z), List.of(first.getAsDouble(), second.getAsDouble())));
  }

  private OptionalDouble logVariance(ComparedQuantity quantity, Puncture puncture) {
    OptionalDouble analytical =
        switch (quantity) {
          case ComparedQuantity.Measured measured -> product(measured.samples(), puncture);
          case ComparedQuantity.Derived derived ->
              switch (derived.scale()) {
                case PRODUCT -> product(derived.samples(), puncture);
                case BY_INTERVAL -> byInterval(derived, puncture);
                case NONE -> OptionalDouble.empty();
              };
        };
    return analytical.isEmpty()
        ? analytical
        : OptionalDouble.of(
            ChangeLimits.logVariance(analytical.getAsDouble(), facts.number(biological(quantity))));
  }

  private static String biological(ComparedQuantity quantity) {
    return "change.biological." + quantity.code();
  }

  /** Σ ln(1 + cv²) over the samples, when the imprecision of each is known. */
  private OptionalDouble product(List<Sample> samples, Puncture puncture) {
    double sum = 0;
    for (Sample sample : samples) {
      OptionalDouble cv = cv(sample, puncture);
      if (cv.isEmpty()) {
        return OptionalDouble.empty();
      }
      sum += Math.log1p(cv.getAsDouble() * cv.getAsDouble());
    }
    return OptionalDouble.of(sum);
  }

  private OptionalDouble cv(Sample sample, Puncture puncture) {
    OptionalDouble stated =
        puncture.panel().panel().find(sample).map(Measurement::cv).orElseGet(OptionalDouble::empty);
    if (stated.isPresent() || !sample.analyte().isConcentration()) {
      return stated;
    }
    return OptionalDouble.of(facts.number(cvKey(sample)));
  }

  private static String cvKey(Sample sample) {
    return "cv." + sample.code();
  }

  /** σ² from the 95 % interval, taken as log-normal: (ln(upper/lower)/(2z))². */
  private OptionalDouble byInterval(ComparedQuantity.Derived derived, Puncture puncture) {
    Optional<Interval> interval = puncture.finding(derived.finding()).uncertainty().interval95();
    if (interval.isEmpty() || !(interval.get().lower() > 0)) {
      return OptionalDouble.empty();
    }
    double width = Math.log(interval.get().upper() / interval.get().lower());
    double sigma = width / (2 * facts.number(Z));
    return OptionalDouble.of(sigma * sigma);
  }

  private static String withoutLimit(ComparedQuantity quantity) {
    return switch (quantity) {
      case ComparedQuantity.Measured measured -> "no imprecision is known";
      case ComparedQuantity.Derived derived ->
          switch (derived.scale()) {
            case PRODUCT -> "no imprecision is known for it: state the cv to have a limit";
            case BY_INTERVAL -> "no interval is known for it";
            case NONE ->
                "a clipped, signed or counted value has no limit of change:"
                    + " see the quotients and concentrations behind it";
          };
    };
  }

  private Grounds grounds(ComparedQuantity quantity, Comparability pair) {
    List<String> keys = new ArrayList<>(List.of(Z, biological(quantity)));
    for (Sample sample : quantity.samples()) {
      boolean isStated =
          pair.earlier().panel().panel().find(sample).map(m -> m.cv().isPresent()).orElse(true)
              && pair.later()
                  .panel()
                  .panel()
                  .find(sample)
                  .map(m -> m.cv().isPresent())
                  .orElse(true);
      if (!isStated && sample.analyte().isConcentration()) {
        keys.add(cvKey(sample));
      }
    }
    return facts.grounds(keys.toArray(String[]::new));
  }
}
