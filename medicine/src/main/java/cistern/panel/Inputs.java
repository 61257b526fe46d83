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
    for (Sample sample : other.needed) {
      if (!both.contains(sample)) {
        both.add(sample);
      }
    }
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
    for (Sample divisor : divisors) {
      if (interval(divisor).isZero()) {
        return Optional.of(divisor.term() + " is zero");
      }
    }
    return Optional.empty();
  }

  /** Why a computed value carries no verdict, if it carries none. */
  public Optional<String> doubt() {
    if (panel.pairing().isInvalid() && isFrom(Compartment.CSF) && isFrom(Compartment.SERUM)) {
      return Optional.of("undetermined because CSF and serum were drawn too far apart");
    }
    for (Sample sample : needed) {
      if (panel.suspected().contains(sample)) {
        return Optional.of("undetermined because the value of " + sample.term() + " is doubted");
      }
    }
    return Optional.empty();
  }

  private boolean isFrom(Compartment in) {
    return needed.stream().anyMatch(s -> s.in() == in);
  }

  /** The samples that were measured. */
  public List<Sample> present() {
    List<Sample> present = new ArrayList<>(needed);
    present.removeIf(sample -> !panel.panel().has(sample));
    return present;
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
