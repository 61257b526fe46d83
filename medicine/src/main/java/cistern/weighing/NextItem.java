package cistern.weighing;

import cistern.criteria.Burden;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One thing that is missing and would change something.
 *
 * @param item the name in files
 * @param changes what it could change: {@code criteria}, {@code answer}, {@code urgent}
 * @param criteriaBits what it tells of the criteria's verdicts, in the edition where it tells more
 * @param informationBits the same, where a probability is given; else bits have no meaning
 * @param burden what it costs the person
 * @param text what to do, in words
 */
public record NextItem(
    String item,
    List<String> changes,
    double criteriaBits,
    OptionalDouble informationBits,
    Burden burden,
    String text) {

  /** Copies the list. */
  public NextItem {
    changes = List.copyOf(changes);
  }
}
