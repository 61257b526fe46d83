package cistern.fact;

import java.util.Locale;
import java.util.Optional;

/**
 * The key of a unit in which results are written: {@code unit.glucose.csf} for the house, {@code
 * unit.glucose.csf@Central Laboratory} for the results of one laboratory.
 *
 * @param sample what it is the unit of, such as {@code glucose.csf}
 * @param laboratory the laboratory, as work-ups name it; none for the house
 */
public record UnitKey(String sample, Optional<String> laboratory) {

  /** What all keys of units begin with. */
  public static final String START = "unit.";

  private static final char AT = '@';

  /** The parts of a key, if it is one of a unit. */
  public static Optional<UnitKey> parse(String key) {
    if (!key.startsWith(START)) {
      return Optional.empty();
    }
    int at = key.indexOf(AT);
    if (at < 0) {
      return Optional.of(new UnitKey(key.substring(START.length()), Optional.empty()));
    }
    String laboratory = key.substring(at + 1).strip();
    return laboratory.isEmpty()
        ? Optional.empty()
        : Optional.of(new UnitKey(key.substring(START.length(), at), Optional.of(laboratory)));
  }

  /** The key of the same unit for the whole house. */
  public String ofHouse() {
    return START + sample;
  }

  /** The key of this unit for one laboratory. */
  public String of(String name) {
    return ofHouse() + AT + name.strip();
  }

  /** Whether it is the unit of a laboratory of this name, however it is spaced and capitalised. */
  public boolean isOf(String name) {
    return laboratory.filter(l -> plain(l).equals(plain(name))).isPresent();
  }

  static String plain(String name) {
    return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }
}
