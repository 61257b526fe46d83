package cistern.exchange.ucum;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.measurement.Analyte;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Conversion between units, and into the canonical unit of an analyte: within a dimension for all,
 * between mass and substance where a molar mass is among the facts.
 */
public final class Conversions {

  private static final String MOLAR_MASS = "molar-mass.";

  private final Facts facts;
  private final CommonUnits common = CommonUnits.read();
  private final Map<String, Conversion> kept = new ConcurrentHashMap<>();
  private final int longest;

  private Conversions(Facts facts) {
    this.facts = facts;
    this.longest = (int) facts.number("input.unit-length");
  }

  /** The conversions under some facts. */
  public static Conversions of(Facts facts) {
    return new Conversions(facts);
  }

  /** From one unit to another of the same dimension. */
  public Conversion conversion(String from, String to) {
    return conversion(from, unit -> within(unit, to));
  }

  /** From a unit to the canonical one of an analyte that has one; kept for the common units. */
  public Conversion conversion(String from, Analyte analyte) {
    Function<Unit, Optional<Ratio>> into = unit -> into(unit, analyte).map(Ratio::reduced);
    return common.find(from).isPresent()
        ? kept.computeIfAbsent(analyte.code() + " " + from, key -> conversion(from, into))
        : conversion(from, into);
  }

  /** From a unit to another, by mass or substance of something whose molar mass is a fact. */
  public Conversion conversion(String from, String to, String substance) {
    return conversion(from, unit -> within(unit, to).or(() -> through(unit, known(to), substance)));
  }

  /**
   * A unit in which results of an analyte can be written; empty when it measures something else.
   *
   * @param text as it is to be written
   * @param ucum the same as UCUM has it
   */
  public Optional<FactValue.Unit> written(String text, String ucum, Analyte analyte) {
    Optional<Unit> unit = find(ucum);
    Unit held = known(analyte.unit().ucum());
    if (unit.isEmpty() || into(unit.get(), analyte).isEmpty()) {
      return Optional.empty();
    }
    Ratio size = unit.get().factor().dividedBy(held.factor());
    boolean isThroughMolarMass = !unit.get().dimension().equals(held.dimension());
    return Optional.of(new FactValue.Unit(text, size.toDouble(BigDecimal.ONE), isThroughMolarMass));
  }

  /** What becomes of a unit where any one would do. */
  public Conversion conversion(String from) {
    return conversion(from, unit -> Optional.of(Ratio.ONE));
  }

  /** Whether a text is a UCUM unit. */
  public boolean isUnit(String text) {
    return find(text).isPresent();
  }

  private Conversion conversion(String from, Function<Unit, Optional<Ratio>> ratio) {
    Optional<Unit> unit = find(from);
    Optional<Ratio> factor = unit.flatMap(ratio);
    if (factor.isPresent()) {
      return new Conversion.By(factor.get());
    }
    Optional<String> meant = meant(from, ratio);
    return unit.isPresent() ? new Conversion.OtherDimension(meant) : new Conversion.Unknown(meant);
  }

  private Optional<Unit> find(String text) {
    if (text.length() > longest) {
      return Optional.empty();
    }
    return common.find(text).or(() -> AllUnits.UCUM.parse(text));
  }

  /** The definitions of UCUM, loaded when the first unit that is not common comes. */
  private static final class AllUnits {
    private static final Ucum UCUM = Ucum.read();
  }

  private Unit known(String text) {
    return find(text).orElseThrow(() -> new IllegalArgumentException("no unit " + text));
  }

  private Optional<Ratio> within(Unit from, String to) {
    Unit target = known(to);
    return from.dimension().equals(target.dimension())
        ? Optional.of(from.factor().dividedBy(target.factor()))
        : Optional.empty();
  }

  private Optional<Ratio> into(Unit from, Analyte analyte) {
    String canonical = analyte.unit().ucum();
    return within(from, canonical).or(() -> through(from, known(canonical), analyte.code()));
  }

  /** Substance = mass / molar mass (g/mol), in either direction. */
  private Optional<Ratio> through(Unit from, Unit to, String substance) {
    String key = MOLAR_MASS + substance;
    if (facts.find(key).isEmpty()) {
      return Optional.empty();
    }
    Ratio gramsPerMole = Ratio.of(BigDecimal.valueOf(facts.number(key)));
    Ratio factor = from.factor().dividedBy(to.factor());
    if (from.dimension().withMolesForGrams().equals(to.dimension())) {
      return Optional.of(factor.dividedBy(gramsPerMole));
    }
    return to.dimension().withMolesForGrams().equals(from.dimension())
        ? Optional.of(factor.times(gramsPerMole))
        : Optional.empty();
  }

  /** A unit that a wrong one may stand for, and that would do. */
  private Optional<String> meant(String wrong, Function<Unit, Optional<Ratio>> ratio) {
    return Stream.concat(
            common.meant(wrong).stream(),
            common.texts().stream().filter(text -> plain(text).equals(plain(wrong))))
        .filter(text -> !text.equals(wrong))
        .filter(text -> find(text).flatMap(ratio).isPresent())
        .findFirst();
  }

  /**
   * A unit without the differences that people overlook: case, brackets, blanks, the micro sign.
   */
  private static String plain(String unit) {
    return unit.replaceAll("[\\s\\[\\]{}()]", "")
        .replaceAll("[µμ]", "u")
        .replace('³', '3')
        .replace("mcg", "ug")
        .replace("×", "")
        .toLowerCase(Locale.ROOT);
  }
}
