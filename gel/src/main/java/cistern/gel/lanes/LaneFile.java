package cistern.gel.lanes;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.json.JsonFactory;

/**
 * The file that gives the lanes' places: {@code {"lanes": [{"kind", "pair", "xCentre", "width"}]}}.
 */
public final class LaneFile {
  private final JsonParser json;

  private LaneFile(JsonParser json) {
    this.json = json;
  }

  /** A file that is not a list of lanes; the message says where and why. */
  public static final class UnreadableLanes extends IOException {
    private static final long serialVersionUID = 1L;

    UnreadableLanes(String sentence) {
      super(sentence);
    }
  }

  /**
   * The plan of a file, its lanes from left to right.
   *
   * @throws UnreadableLanes when it is not a list of lanes
   */
  public static LanePlan read(Path file) throws IOException {
    return parse(Files.readString(file));
  }

  /** The plan of a file's text. */
  public static LanePlan parse(String text) throws UnreadableLanes {
    try (JsonParser json =
        new JsonFactory().createParser(tools.jackson.core.ObjectReadContext.empty(), text)) {
      return new LaneFile(json).plan();
    } catch (JacksonException e) {
      throw new UnreadableLanes("the lane file is not JSON");
    }
  }

  private LanePlan plan() throws UnreadableLanes {
    List<NamedLane> lanes = new ArrayList<>();
    expect(json.nextToken() == JsonToken.START_OBJECT, "$", "an object with \"lanes\"");
    while (json.nextToken() == JsonToken.PROPERTY_NAME) {
      boolean isLanes = json.currentName().equals("lanes");
      json.nextToken();
      if (isLanes) {
        expect(json.currentToken() == JsonToken.START_ARRAY, "lanes", "an array");
        while (json.nextToken() != JsonToken.END_ARRAY) {
          lanes.add(lane("lanes[" + lanes.size() + "]"));
        }
      } else {
        json.skipChildren();
      }
    }
    expect(!lanes.isEmpty(), "lanes", "at least one lane");
    return new LanePlan(lanes).inOrder();
  }

  private NamedLane lane(String place) throws UnreadableLanes {
    expect(json.currentToken() == JsonToken.START_OBJECT, place, "an object");
    Optional<LaneKind> kind = Optional.empty();
    OptionalInt pair = OptionalInt.empty();
    double xCentre = -1;
    double width = -1;
    while (json.nextToken() == JsonToken.PROPERTY_NAME) {
      String name = json.currentName();
      json.nextToken();
      switch (name) {
        case "kind" -> kind = LaneKind.parse(String.valueOf(json.getValueAsString()));
        case "pair" -> pair = pair(place + ".pair");
        case "xCentre" -> xCentre = number(place + ".xCentre");
        case "width" -> width = number(place + ".width");
        default -> json.skipChildren();
      }
    }
    expect(kind.isPresent(), place + ".kind", "csf, serum, control or blank");
    expect(xCentre >= 0, place + ".xCentre", "a column of the picture");
    expect(width > 0, place + ".width", "a width above 0");
    return new NamedLane(
        kind.orElseThrow(), pair, Optional.of(new NamedLane.Place(xCentre, width)));
  }

  private OptionalInt pair(String place) throws UnreadableLanes {
    if (json.currentToken() == JsonToken.VALUE_NULL) {
      return OptionalInt.empty();
    }
    expect(json.currentToken() == JsonToken.VALUE_NUMBER_INT, place, "a whole number");
    return OptionalInt.of(json.getIntValue());
  }

  private double number(String place) throws UnreadableLanes {
    expect(json.currentToken().isNumeric(), place, "a number");
    return json.getDoubleValue();
  }

  private static void expect(boolean isMet, String place, String what) throws UnreadableLanes {
    if (!isMet) {
      throw new UnreadableLanes(place + " should be " + what);
    }
  }
}
