package cistern.panel;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Swapped fluids, slips of unit and implausible values: for each analyte the first explanation that
 * fits. Nothing is corrected.
 */
final class Plausibility {

  private static final List<Double> SLIPS = List.of(10.0, 100.0, 1000.0, 0.1, 0.01, 0.001);

  private static final Sample ALBUMIN = Sample.csf(Analyte.ALBUMIN);
  private static final Sample PROTEIN = Sample.csf(Analyte.TOTAL_PROTEIN);

  private final Panel panel;
  private final Plausible plausible;

  private Plausibility(Panel panel, Plausible plausible) {
    this.panel = panel;
    this.plausible = plausible;
  }

  static List<ValueUnderSuspicion> check(Panel panel, Facts facts) {
    Plausibility check = new Plausibility(panel, new Plausible(facts));
    List<ValueUnderSuspicion> found =
        new ArrayList<>(
            Arrays.stream(Analyte.values())
                .filter(check.plausible::isWatched)
                .flatMap(analyte -> check.check(analyte).stream())
                .toList());
    boolean isDoubted = found.stream().anyMatch(s -> s.suspected().contains(ALBUMIN));
    if (!isDoubted) {
      check.albuminInProtein().ifPresent(found::add);
    }
    return found;
  }

  /** Albumin is a part of the protein, and not a small one: a slip on either is suspected. */
  private Optional<ValueUnderSuspicion> albuminInProtein() {
    Optional<Interval> albumin = value(ALBUMIN);
    Optional<Interval> protein = value(PROTEIN);
    if (albumin.isEmpty()
        || protein.isEmpty()
        || protein.get().isZero()
        || plausible.isPartAllowed(albumin.get(), protein.get())) {
      return Optional.empty();
    }
    List<UnitSlipSuspected.Slip> slips = new ArrayList<>();
    for (double factor : SLIPS) {
      if (plausible.isPartAllowed(albumin.get().times(factor), protein.get())) {
        slips.add(new UnitSlipSuspected.Slip(ALBUMIN, factor));
        slips.add(new UnitSlipSuspected.Slip(PROTEIN, 1 / factor));
      }
    }
    return slips.isEmpty()
        ? Optional.of(
            new ImplausibleValue(
                List.of(ALBUMIN, PROTEIN), place(ALBUMIN), plausible.partGrounds()))
        : Optional.of(
            new UnitSlipSuspected(Analyte.ALBUMIN, slips, place(ALBUMIN), plausible.partGrounds()));
  }

  private List<ValueUnderSuspicion> check(Analyte analyte) {
    Optional<Interval> csf = value(Sample.csf(analyte));
    Optional<Interval> serum = value(Sample.serum(analyte));
    if (plausible.isAllowed(analyte, csf, serum)) {
      return List.of();
    }
    if (csf.isPresent() && serum.isPresent() && plausible.isAllowed(analyte, serum, csf)) {
      return List.of(
          new CompartmentsSwapped(analyte, place(Sample.csf(analyte)), plausible.grounds(analyte)));
    }
    List<UnitSlipSuspected.Slip> slips = slips(analyte, csf, serum);
    return slips.isEmpty() ? implausible(analyte) : List.of(slip(analyte, slips));
  }

  private List<UnitSlipSuspected.Slip> slips(
      Analyte analyte, Optional<Interval> csf, Optional<Interval> serum) {
    List<UnitSlipSuspected.Slip> found = new ArrayList<>();
    for (double factor : SLIPS) {
      if (csf.isPresent() && plausible.isAllowed(analyte, csf.map(v -> v.times(factor)), serum)) {
        found.add(new UnitSlipSuspected.Slip(Sample.csf(analyte), factor));
      }
      if (serum.isPresent() && plausible.isAllowed(analyte, csf, serum.map(v -> v.times(factor)))) {
        found.add(new UnitSlipSuspected.Slip(Sample.serum(analyte), factor));
      }
    }
    return found;
  }

  private UnitSlipSuspected slip(Analyte analyte, List<UnitSlipSuspected.Slip> slips) {
    return new UnitSlipSuspected(
        analyte, slips, place(slips.getFirst().sample()), plausible.grounds(analyte));
  }

  private List<ValueUnderSuspicion> implausible(Analyte analyte) {
    List<Sample> outside =
        List.of(Sample.csf(analyte), Sample.serum(analyte)).stream()
            .filter(s -> value(s).filter(v -> !plausible.isAllowed(s, v)).isPresent())
            .toList();
    if (outside.isEmpty()) {
      return List.of(
          new ImplausibleValue(
              List.of(Sample.csf(analyte), Sample.serum(analyte)),
              place(Sample.csf(analyte)),
              plausible.grounds(analyte)));
    }
    return outside.stream()
        .<ValueUnderSuspicion>map(
            s -> new ImplausibleValue(List.of(s), place(s), plausible.grounds(analyte)))
        .toList();
  }

  private Optional<Interval> value(Sample sample) {
    return panel.find(sample).map(m -> m.value());
  }

  private String place(Sample sample) {
    return panel.find(sample).map(Measurement::place).orElse("results");
  }
}
