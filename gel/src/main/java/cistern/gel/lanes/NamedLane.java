package cistern.gel.lanes;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A lane as a person names it. In words it is its kind, then with a colon the number of its pair,
 * then where it lies: {@code csf}, {@code csf:1}, {@code csf:1@130.2/62}.
 *
 * @param kind what was put on it
 * @param pair the number of its pair, when it was given
 * @param place where it lies, when it was given
 */
public record NamedLane(LaneKind kind, OptionalInt pair, Optional<Place> place) {

  private static final String NUMBER = "(\\d{1,6}(?:\\.\\d{1,20})?)";
  private static final Pattern WORDS =
      Pattern.compile(
          "\\s*(\\w+)\\s*(?::\\s*(\\d{1,4})\\s*)?(?:@" + NUMBER + "/" + NUMBER + "\\s*)?");

  /** A middle at mid-height and a width, in pixels of the picture. */
  public record Place(double xCentre, double width) {
    private String toWords() {
      return "@" + tenths(xCentre) + "/" + tenths(width);
    }
  }

  /**
   * The lane of some words.
   *
   * @throws IllegalArgumentException when they are none, with a sentence
   */
  static NamedLane parse(String words) {
    Matcher parts = WORDS.matcher(words);
    Optional<LaneKind> kind = parts.matches() ? LaneKind.parse(parts.group(1)) : Optional.empty();
    Optional<Place> place = kind.isPresent() ? place(parts) : Optional.empty();
    if (kind.isEmpty() || place.filter(p -> p.width() <= 0).isPresent()) {
      throw new IllegalArgumentException(
          "a lane is csf, serum, control or blank, with :NUMBER for its pair and @CENTRE/WIDTH for"
              + " its place; not \""
              + words
              + "\"");
    }
    String pair = parts.group(2);
    return new NamedLane(
        kind.get(),
        pair == null ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(pair)),
        place);
  }

  private static Optional<Place> place(Matcher parts) {
    return parts.group(3) == null
        ? Optional.empty()
        : Optional.of(
            new Place(Double.parseDouble(parts.group(3)), Double.parseDouble(parts.group(4))));
  }

  /** The lane in words, its place to a tenth of a pixel. */
  String toWords() {
    return kind.word()
        + (pair.isPresent() ? ":" + pair.getAsInt() : "")
        + place.map(Place::toWords).orElse("");
  }

  private static String tenths(double pixels) {
    BigDecimal rounded = BigDecimal.valueOf(pixels).setScale(1, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
