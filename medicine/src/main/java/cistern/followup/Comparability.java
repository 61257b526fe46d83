package cistern.followup;

import cistern.analysis.Puncture;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Whether two punctures compare: site, pairing, assay, doubted values, treatment.
 *
 * @param earlier the first
 * @param later the second
 */
record Comparability(Puncture earlier, Puncture later) {

  private static final String LUMBAR = "lumbar";

  /** Why a quantity does not compare, if it does not. */
  Optional<String> obstacle(ComparedQuantity quantity) {
    List<Sample> samples = quantity.samples();
    return site(samples)
        .or(() -> pairing(samples))
        .or(() -> suspected(samples))
        .or(() -> assay(samples))
        .or(() -> assayUnnamed(quantity));
  }

  /**
   * A trace in blood has another number on every platform: two that are not named don't compare.
   */
  private Optional<String> assayUnnamed(ComparedQuantity quantity) {
    return switch (quantity) {
      case ComparedQuantity.Derived derived
          when derived.finding().kind() == FindingCode.Kind.SERUM && !isAssayStated(quantity) ->
          Optional.of("the assay of " + quantity.term() + " is not stated at both punctures");
      case ComparedQuantity.Derived derived -> Optional.empty();
      case ComparedQuantity.Measured measured -> Optional.empty();
    };
  }

  private boolean isAssayStated(ComparedQuantity quantity) {
    return quantity.samples().stream()
        .allMatch(s -> assay(earlier, s).isPresent() && assay(later, s).isPresent());
  }

  private Optional<String> site(List<Sample> samples) {
    if (samples.stream().noneMatch(s -> s.in() == Compartment.CSF)) {
      return Optional.empty();
    }
    Optional<String> first = earlier.panel().panel().csf().site();
    Optional<String> second = later.panel().panel().csf().site();
    String one = first.orElse(LUMBAR);
    String other = second.orElse(LUMBAR);
    return one.equals(other)
        ? Optional.empty()
        : Optional.of("taken at different sites: " + one + ", then " + other);
  }

  private Optional<String> pairing(List<Sample> samples) {
    boolean isPair =
        samples.stream().anyMatch(s -> s.in() == Compartment.CSF)
            && samples.stream().anyMatch(s -> s.in() == Compartment.SERUM);
    boolean isInvalid =
        earlier.panel().pairing().isInvalid() || later.panel().pairing().isInvalid();
    return isPair && isInvalid
        ? Optional.of("CSF and serum of one puncture were drawn too far apart")
        : Optional.empty();
  }

  private Optional<String> suspected(List<Sample> samples) {
    return samples.stream()
        .filter(
            s -> earlier.panel().suspected().contains(s) || later.panel().suspected().contains(s))
        .findFirst()
        .map(s -> "the value of " + s.term() + " is doubted");
  }

  private Optional<String> assay(List<Sample> samples) {
    return samples.stream().flatMap(s -> assayChange(s).stream()).findFirst();
  }

  private Optional<String> assayChange(Sample sample) {
    Optional<String> first = assay(earlier, sample);
    Optional<String> second = assay(later, sample);
    return first.isPresent() && second.isPresent() && !first.equals(second)
        ? Optional.of(
            "the assay of " + sample.term() + " changed: " + first.get() + ", then " + second.get())
        : Optional.empty();
  }

  private static Optional<String> assay(Puncture puncture, Sample sample) {
    return puncture.panel().panel().find(sample).flatMap(Measurement::assay);
  }

  /** What to keep in mind although it compares. */
  List<String> doubts(ComparedQuantity quantity) {
    List<String> doubts = new ArrayList<>();
    if (!isAssayStated(quantity)) {
      doubts.add("the assay is not stated at both punctures");
    }
    if (usesImmunoglobulin(quantity)) {
      treatments().forEach(doubts::add);
    }
    return doubts;
  }

  private static boolean usesImmunoglobulin(ComparedQuantity quantity) {
    return quantity.samples().stream()
        .map(s -> s.analyte().family())
        .anyMatch(
            family ->
                family == Analyte.Family.IMMUNOGLOBULIN
                    || family == Analyte.Family.SPECIFIC_ANTIBODY);
  }

  private Stream<String> treatments() {
    return Stream.of(Circumstance.IMMUNOGLOBULIN_INFUSION, Circumstance.PLASMA_EXCHANGE)
        .filter(
            c ->
                earlier.panel().panel().answer(c).isYes()
                    || later.panel().panel().answer(c).isYes())
        .map(
            c ->
                c == Circumstance.PLASMA_EXCHANGE
                    ? "plasma exchange at one puncture"
                    : "immunoglobulin infusion at one puncture");
  }

  /** What stands between the punctures as a whole. */
  List<String> general() {
    List<String> all = new ArrayList<>();
    if (earlier.panel().panel().csf().site().isEmpty()
        || later.panel().panel().csf().site().isEmpty()) {
      all.add("the site is not recorded at both punctures; lumbar is taken");
    }
    if (earlier.at().isEmpty() || later.at().isEmpty()) {
      all.add("a draw time is missing, so the days between are not known");
    }
    all.addAll(treatments().toList());
    return all;
  }
}
