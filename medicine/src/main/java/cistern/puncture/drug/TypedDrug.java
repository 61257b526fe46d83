package cistern.puncture.drug;

import java.util.List;
import java.util.Optional;

/**
 * One name as somebody typed it.
 *
 * @param typed as typed
 * @param entry the drug, where the name is known
 * @param dose what was typed beside it
 * @param nearest the known names that are most alike, when the name is not known
 */
public record TypedDrug(String typed, Optional<DrugEntry> entry, Dose dose, List<String> nearest) {

  /** Copies the names. */
  public TypedDrug {
    nearest = List.copyOf(nearest);
  }

  /** The international name, where the drug itself and not only its class is known. */
  public Optional<String> recognised() {
    return entry.filter(e -> e.kind() != DrugEntry.Kind.CLASS).map(DrugEntry::name);
  }

  /** The rows of the guidelines that speak of it. */
  public Optional<String> intervals() {
    return entry.flatMap(e -> e.intervals().by(dose.route()));
  }

  /** Whether it must be asked about before a puncture. */
  public boolean isAskedAbout() {
    return entry.isEmpty() || entry.get().isAskedAbout();
  }
}
