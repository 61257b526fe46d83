package cistern.puncture.drug;

import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;

/**
 * A drug of the table.
 *
 * @param name the international name, or the class where only that can be told
 * @param drugClass what it belongs to
 * @param kind what its name means before a puncture
 * @param intervals the rows of the guidelines that speak of it, by route; empty when none was read
 * @param note what to say beside it; may be empty
 * @param grounds what the entry rests on
 */
public record DrugEntry(
    String name, String drugClass, Kind kind, Intervals intervals, String note, Grounds grounds) {

  /** What a drug means before a puncture. */
  public enum Kind {
    /** An antithrombotic. */
    TAKEN,
    /** Two drugs in one tablet. */
    COMBINATION,
    /** Only the class is named: the drug is asked for. */
    CLASS,
    /** No antithrombotic by its label, and bleeding is known: the prescriber is asked. */
    ASKS,
    /** Worth a note, no more. */
    NOTED,
    /** No antithrombotic, named so that it is not taken for one. */
    NOT
  }

  /**
   * Which rows of the guidelines speak of a drug.
   *
   * @param usual by whatever route
   * @param vein into a vein
   * @param skin under the skin
   */
  public record Intervals(Optional<String> usual, Optional<String> vein, Optional<String> skin) {
    /** The rows for a route. */
    public Optional<String> by(Dose.Route route) {
      return switch (route) {
        case VEIN -> vein.or(() -> usual);
        case SKIN -> skin.or(() -> usual);
        case UNKNOWN -> usual;
      };
    }
  }

  /** Whether it is an antithrombotic whose guidelines are asked. */
  public boolean isAntithrombotic() {
    return kind == Kind.TAKEN;
  }

  /** Whether its name alone leaves something to ask before a puncture. */
  public boolean isAskedAbout() {
    return kind == Kind.CLASS || kind == Kind.ASKS;
  }

  /** Whether it thins the blood by its class, so that a puncture may bleed on. */
  public boolean isAnticoagulant() {
    return !List.of("antiplatelet", "nsaid").contains(drugClass)
        && (kind == Kind.TAKEN || kind == Kind.CLASS);
  }
}
