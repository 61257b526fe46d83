package cistern.exchange.ucum;

import cistern.measurement.Analyte;
import cistern.measurement.CanonicalUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Units as laboratories write them in messages and tables: a declared list, which comes before UCUM
 * there and has no part in work-up files. {@code G/L} is gauss per litre in UCUM and never meant; a
 * spelling that may stand for two units stands for the one that measures the analyte.
 */
public final class Spellings {

  private final Conversions conversions;
  private final CommonUnits common = CommonUnits.read();

  private Spellings(Conversions conversions) {
    this.conversions = conversions;
  }

  /** The spellings, judged by some conversions. */
  public static Spellings of(Conversions conversions) {
    return new Spellings(conversions);
  }

  /**
   * The UCUM unit of a written one.
   *
   * @param written as in the message
   * @param analyte what is measured
   * @return the one unit that the text may stand for; empty when it stands for none, for a unit of
   *     something else, or for several that differ
   */
  public Optional<String> ucum(String written, Analyte analyte) {
    List<String> fitting = candidates(written).filter(unit -> isOf(unit, analyte)).toList();
    boolean isOne = fitting.stream().distinct().count() == 1;
    return isOne ? Optional.of(fitting.getFirst()) : Optional.empty();
  }

  /** The UCUM unit of a written one, whatever it measures; empty when it is none or unclear. */
  public Optional<String> ucum(String written) {
    List<String> all = candidates(written).filter(conversions::isUnit).distinct().toList();
    return all.size() == 1 ? Optional.of(all.getFirst()) : Optional.empty();
  }

  /** Whether a text is a unit or a spelling of one. */
  public boolean isUnit(String written) {
    return candidates(written).anyMatch(conversions::isUnit);
  }

  /**
   * Whether a written unit says something else than the one that is read: it is understood, and
   * nothing that it may stand for has that size. A text that is no unit contradicts nothing.
   */
  public boolean isAgainst(String written, String unit) {
    List<String> understood = candidates(written).filter(conversions::isUnit).toList();
    return !understood.isEmpty()
        && understood.stream()
            .noneMatch(
                u ->
                    conversions.conversion(u, unit) instanceof Conversion.By(Ratio ratio)
                        && ratio.isSame(Ratio.ONE));
  }

  private boolean isOf(String unit, Analyte analyte) {
    return analyte.unit() == CanonicalUnit.ARBITRARY
        ? conversions.isUnit(unit)
        : conversions.conversion(unit, analyte) instanceof Conversion.By;
  }

  private Stream<String> candidates(String written) {
    String text = written.strip();
    List<String> listed = common.spelled(text);
    return listed.isEmpty() ? Stream.of(text).filter(t -> !t.isEmpty()) : listed.stream();
  }
}
