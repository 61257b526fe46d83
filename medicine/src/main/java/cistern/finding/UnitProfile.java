package cistern.finding;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.UnitKey;
import cistern.measurement.Analyte;
import cistern.measurement.CanonicalUnit;
import cistern.measurement.Sample;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The units in which a laboratory, or a house, writes results: local policy. Papers write in them;
 * what is computed, judged and sent stays in the units of the medicine.
 *
 * @param bySample the units that were chosen; whatever is not there is written in the medicine's
 */
public record UnitProfile(Map<Sample, WrittenUnit> bySample) {

  /** Nothing was chosen. */
  public static final UnitProfile STANDARD = new UnitProfile(Map.of());

  private static final String MOLAR_MASS = "molar-mass.";

  /** Copies the units. */
  public UnitProfile {
    bySample = Map.copyOf(bySample);
  }

  /** The units of the house, or of the laboratory whose facts these are. */
  public static UnitProfile of(Facts facts) {
    return facts.once(UnitProfile.class, UnitProfile::read);
  }

  private static UnitProfile read(Facts facts) {
    Map<Sample, WrittenUnit> units = new HashMap<>();
    for (String key : facts.keys(UnitKey.START)) {
      if (facts.fact(key).value() instanceof FactValue.Unit unit) {
        UnitKey.parse(key)
            .filter(of -> of.laboratory().isEmpty())
            .flatMap(of -> Sample.parse(of.sample()))
            .ifPresent(sample -> units.put(sample, written(unit, sample.analyte(), facts)));
      }
    }
    return new UnitProfile(units);
  }

  private static WrittenUnit written(FactValue.Unit unit, Analyte analyte, Facts facts) {
    double size = unit.size();
    if (unit.isThroughMolarMass()) {
      double gramsPerMole = facts.number(MOLAR_MASS + analyte.code());
      boolean isHeldAsSubstance = analyte.unit() == CanonicalUnit.MMOL_PER_L;
      size = isHeldAsSubstance ? size / gramsPerMole : size * gramsPerMole;
    }
    boolean isOfCells = analyte.unit() == CanonicalUnit.PER_UL;
    return new WrittenUnit(WrittenUnit.printed(unit.written()), size, isOfCells);
  }

  /** The unit that was chosen for a sample. */
  public Optional<WrittenUnit> find(Sample sample) {
    return Optional.ofNullable(bySample.get(sample));
  }

  /** The unit that was chosen for a quantity; none for quotients and what follows from them. */
  public Optional<WrittenUnit> find(FindingCode code) {
    return switch (code.kind()) {
      case CSF, LOCAL, CORRECTED -> find(Sample.csf(code.analyte()));
      case SERUM -> find(Sample.serum(code.analyte()));
      case QUOTIENT, FRACTION, INDEX, RATE, ANTIBODY_INDEX, REACTION, RATIO -> Optional.empty();
    };
  }

  /** A value of a quantity in the unit that was chosen for it, without that unit. */
  public String number(FindingCode code, double held) {
    return WrittenUnit.number(find(code), unit -> unit.number(held), () -> Printed.of(code, held));
  }

  /**
   * A limit or another round number with its unit.
   *
   * @param otherwise how it stands where no unit was chosen
   */
  public String limit(Sample sample, double held, String otherwise) {
    return find(sample).map(unit -> unit.limit(held) + " " + unit.text()).orElse(otherwise);
  }
}
