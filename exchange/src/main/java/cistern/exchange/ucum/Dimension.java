package cistern.exchange.ucum;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What a unit measures: the powers of the units that cannot be reduced to others. These are the
 * base units of UCUM, the mole (which UCUM defines as a mere number, so that cells and moles would
 * mix), and every arbitrary unit, which compares with nothing but itself (UCUM §24).
 *
 * @param powers by unit, none of them zero
 */
record Dimension(SortedMap<String, Integer> powers) {

  static final String MOLE = "mol";
  static final String GRAM = "g";
  static final Dimension NONE = new Dimension(new TreeMap<>());

  /** Copies the powers. */
  Dimension {
    powers = Collections.unmodifiableSortedMap(new TreeMap<>(powers));
  }

  /** The dimension of one unit that stands for itself. */
  static Dimension of(String unit) {
    return new Dimension(new TreeMap<>(Map.of(unit, 1)));
  }

  /** The dimension of a text such as {@code g1.m-3}; the figure 1 for none. */
  static Dimension parse(String text) {
    Dimension all = NONE;
    for (String step : text.equals("1") ? new String[0] : text.split("\\.", -1)) {
      int digits = step.length() - step.replaceFirst("-?\\d+$", "").length();
      String unit = step.substring(0, step.length() - digits);
      all = all.times(of(unit), Integer.parseInt(step.substring(step.length() - digits)));
    }
    return all;
  }

  /** This times a power of another. */
  Dimension times(Dimension other, int exponent) {
    TreeMap<String, Integer> product = new TreeMap<>(powers);
    other.powers.forEach((unit, power) -> product.merge(unit, power * exponent, Integer::sum));
    product.values().removeIf(power -> power == 0);
    return new Dimension(product);
  }

  /** This with the mole in the place of the gram, at the same power. */
  Dimension withMolesForGrams() {
    int power = powers.getOrDefault(GRAM, 0);
    return times(of(GRAM), -power).times(of(MOLE), power);
  }

  /** How it is written in tables. */
  String toText() {
    return powers.isEmpty()
        ? "1"
        : powers.entrySet().stream()
            .map(e -> e.getKey() + e.getValue())
            .collect(Collectors.joining("."));
  }
}
