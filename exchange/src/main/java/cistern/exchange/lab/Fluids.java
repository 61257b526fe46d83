package cistern.exchange.lab;

import cistern.measurement.Compartment;
import java.util.List;
import java.util.Optional;

/** Which fluid a specimen is, by the words that name it. */
public final class Fluids {

  private static final WordTable WORDS = WordTable.read("fluids.tsv");

  private Fluids() {}

  /** A fluid, with those that a work-up does not hold. */
  public enum Fluid {
    CSF,
    SERUM,
    /** Stands for serum only where the code says serum or plasma. */
    PLASMA,
    BLOOD,
    /** Any other fluid or tissue. */
    OTHER;

    /** The compartment of a work-up. */
    Optional<Compartment> compartment() {
      return switch (this) {
        case CSF -> Optional.of(Compartment.CSF);
        case SERUM -> Optional.of(Compartment.SERUM);
        case BLOOD -> Optional.of(Compartment.BLOOD);
        case PLASMA, OTHER -> Optional.empty();
      };
    }
  }

  /** The fluid of a word, if it is one. */
  public static Optional<Fluid> parse(String word) {
    return WORDS.find(word).map(name -> Fluid.valueOf(name.toUpperCase(java.util.Locale.ROOT)));
  }

  /** The fluid that some words name together; empty when none is known or they disagree. */
  static Optional<Fluid> of(List<String> words) {
    List<Fluid> named = words.stream().flatMap(w -> parse(w).stream()).distinct().toList();
    return named.size() == 1 ? Optional.of(named.getFirst()) : Optional.empty();
  }
}
