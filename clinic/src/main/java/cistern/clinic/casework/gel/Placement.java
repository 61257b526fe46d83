package cistern.clinic.casework.gel;

import cistern.gel.lanes.LanePlan;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The lanes of a gel as a person placed them, and which pair is this person's.
 *
 * @param plan names, pairs and places of all lanes
 * @param pair the number of the pair that is looked at
 * @param across what stood in the form of the bands on the other side of the step: before it was
 *     done, or before it was undone
 */
record Placement(LanePlan plan, int pair, String across) {

  private static final Pattern WORDS = Pattern.compile("(\\d{1,4})=([^;]+);(\\S*)");

  /** What a form or a draft holds; nothing where it holds no placement. */
  static Optional<Placement> parse(String text) {
    Matcher parts = WORDS.matcher(text);
    try {
      return parts.matches()
          ? Optional.of(
              new Placement(
                  LanePlan.parse(parts.group(2)), Integer.parseInt(parts.group(1)), parts.group(3)))
          : Optional.empty();
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  static List<Placement> parse(List<String> texts) {
    return texts.stream().flatMap(t -> parse(t).stream()).toList();
  }

  String toText() {
    return pair + "=" + plan.toWords() + ";" + across;
  }

  /** The same step with something else on its other side. */
  Placement with(String other) {
    return new Placement(plan, pair, other);
  }
}
