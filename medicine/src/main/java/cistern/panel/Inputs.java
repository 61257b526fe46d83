package cistern.panel;

import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The samples that one formula needs from a panel, and what stands in its way.
 *
 * @param panel where they come from
 * @param needed the samples of the formula
 * @param divisors those among them that must not be zero
 */
public record Inputs(CheckedPanel panel, List<Sample> needed, List<Sample> divisors) {

  /** Copies the lists. */
  public Inputs {
    needed = List.copyOf(needed);
    divisors = List.copyOf(divisors);
  }

  /** The inputs of a formula without a divisor. */
  public static Inputs of(CheckedPanel panel, Sample... needed) {
    return new Inputs(panel, List.of(needed), List.of());
  }

  /** These inputs, some of which are divisors. */
  public Inputs dividingBy(Sample... samples) {
    return new Inputs(panel, needed, List.of(samples));
  }

  /** Both together. */
  public Inputs and(Inputs other) {
    List<Sample> both = new ArrayList<>(needed);
    other.needed.stream().filter(s -> !both.contains(s)).forEach(both::add);
    List<Sample> allDivisors = new ArrayList<>(divisors);
    allDivisors.addAll(other.divisors);
    return new Inputs(panel, both, allDivisors);
  }

  /** Why the formula cannot be computed, if it cannot. */
  public Optional<String> obstacle() {
    List<String> missing = new ArrayList<>();
    for (Sample sample : needed) {
      if (!panel.panel().has(sample)) {
        missing.add(sample.term());
      }
    }
    if (!missing.isEmpty()) {
      return Optional.of("not measured: " + String.join(", ", missing));
    }
    return divisors.stream()
        .filter(s -> interval(s).isZero())
        .findFirst()
        .map(s -> s.term() + " is zero");
  }

  /** Why a computed value carries no verdict, if it carries none. */
  public Optional<String> doubt() {
    boolean isComparison =
        needed.stream().anyMatch(s -> s.in() == Compartment.CSF)
            && needed.stream().anyMatch(s -> s.in() == Compartment.SERUM);
    if (isComparison && panel.pairing().isInvalid()) {
      return Optional.of("undetermined because CSF and serum were drawn too far apart");
    }
    return needed.stream()
        .filter(panel.suspected()::contains)
        .findFirst()
        .map(s -> "undetermined because the value of " + s.term() + " is doubted");
  }

  /** The samples that were measured. */
  public List<Sample> present() {
    return needed.stream().filter(panel.panel()::has).toList();
  }

  /** What is known of one sample that was measured. */
  public Interval interval(Sample sample) {
    return panel
        .panel()
        .find(sample)
        .map(Measurement::value)
        .orElseThrow(() -> new IllegalStateException(sample.code() + " was not measured"));
  }

  /** CSF over serum, both measured and the serum not zero. */
  public Interval quotient(Sample csf, Sample serum) {
    return interval(csf).dividedBy(interval(serum));
  }
}
