package cistern.panel;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Analyte.Family;
import cistern.measurement.Compartment;
import cistern.measurement.Measurement;
import java.util.List;
import java.util.Optional;

/**
 * Fractions of cells, or a haematocrit, that add up to more than the whole.
 *
 * @param place where the first of them stands
 */
public record CellFractionsOverOne(String place) implements PanelTrouble {

  private static final String ROUNDING = "plausible.cell-fractions.rounding";

  static List<CellFractionsOverOne> check(Panel panel, Facts facts) {
    return List.of(Compartment.values()).stream()
        .flatMap(in -> check(panel, in, facts).stream())
        .toList();
  }

  private static Optional<CellFractionsOverOne> check(Panel panel, Compartment in, Facts facts) {
    List<Measurement> parts =
        panel.results().values().stream()
            .filter(m -> m.sample().in() == in)
            .filter(m -> m.sample().analyte().family() == Family.FRACTION)
            .toList();
    Optional<Measurement> single = parts.stream().filter(m -> m.value().lower() > 1).findFirst();
    if (single.isPresent()) {
      return single.map(m -> new CellFractionsOverOne(m.place()));
    }
    List<Measurement> cells =
        parts.stream().filter(m -> m.sample().analyte() != Analyte.HEMATOCRIT).toList();
    double sum = cells.stream().mapToDouble(m -> m.value().lower()).sum();
    return sum > 1 + facts.number(ROUNDING)
        ? Optional.of(new CellFractionsOverOne(cells.getFirst().place()))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "implausible-value";
  }

  @Override
  public String text() {
    return "The fractions of cells add up to more than the whole. Fractions run from 0 to 1, or use"
        + " the unit %.";
  }
}
