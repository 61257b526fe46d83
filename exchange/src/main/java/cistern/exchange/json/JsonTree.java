package cistern.exchange.json;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.TokenStreamContext;
import tools.jackson.core.TokenStreamFactory;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.json.JsonReadFeature;

/** Text to a tree (RFC 8259), with every problem that the text alone shows. */
final class JsonTree {

  /**
   * Limits are ours, because they are checked with a place; names are not shared, so that hostile
   * names cost no more than others.
   */
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
          .disable(TokenStreamFactory.Feature.CANONICALIZE_PROPERTY_NAMES)
          .disable(TokenStreamFactory.Feature.INTERN_PROPERTY_NAMES)
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxNumberLength(Integer.MAX_VALUE)
                  .maxStringLength(Integer.MAX_VALUE)
                  .maxNameLength(Integer.MAX_VALUE)
                  .maxNestingDepth(Integer.MAX_VALUE)
                  .build())
          .build();

  private final JsonParser parser;
  private final InputLimits limits;
  private final InputProblems problems;

  /** The number of characters up to the last that is not white space. */
  private final int length;

  private int values;

  private JsonTree(JsonParser parser, String text, InputLimits limits, InputProblems problems) {
    this.parser = parser;
    this.length = text.stripTrailing().length();
    this.limits = limits;
    this.problems = problems;
  }

  /** The tree of a text; empty, with a problem noted, when the text is not JSON. */
  static Optional<Json> read(String text, InputLimits limits, InputProblems problems) {
    try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), text)) {
      return new JsonTree(parser, text, limits, problems).document();
    }
  }

  private Optional<Json> document() {
    try {
      Json root = value(parser.nextToken(), 0);
      if (isFollowed()) {
        stop(InputTrouble.MORE_AFTER_END, parser.currentTokenLocation());
        return Optional.empty();
      }
      return Optional.of(root);
    } catch (JacksonException e) {
      boolean isAtEnd = e.getLocation().getCharOffset() >= length;
      stop(isAtEnd ? InputTrouble.ENDS_EARLY : InputTrouble.NOT_JSON, e.getLocation());
    } catch (LimitPassed e) {
      problems.add(InputProblem.of(e.trouble, where(parser.currentLocation()), e.limit));
    }
    return Optional.empty();
  }

  private boolean isFollowed() {
    try {
      return parser.nextToken() != null;
    } catch (JacksonException e) {
      return true;
    }
  }

  private void stop(InputTrouble trouble, TokenStreamLocation at) {
    String where = where(at);
    String path = place().path();
    String full = path.isEmpty() ? where : path + " (" + where + ")";
    problems.add(InputProblem.of(trouble, full, at.getLineNr(), at.getColumnNr()));
  }

  private static String where(TokenStreamLocation at) {
    return "line " + at.getLineNr() + ", column " + at.getColumnNr();
  }

  /** Where the parser stands, also when a value cannot be read. */
  private Place place() {
    Deque<TokenStreamContext> steps = new ArrayDeque<>();
    for (TokenStreamContext step = parser.streamReadContext();
        step != null;
        step = step.getParent()) {
      steps.push(step);
    }
    Place place = Place.WHOLE;
    for (TokenStreamContext step : steps) {
      if (step.inArray() && step.hasCurrentIndex()) {
        place = place.item(step.getCurrentIndex());
      } else if (step.inObject() && step.hasCurrentName()) {
        place = place.member(step.currentName());
      }
    }
    return place;
  }

  private Json value(JsonToken token, int depth) {
    if (++values > limits.values()) {
      throw new LimitPassed(InputTrouble.TOO_MANY_VALUES, limits.values());
    }
    if (depth > limits.depth()) {
      throw new LimitPassed(InputTrouble.TOO_DEEP, limits.depth());
    }
    return switch (token) {
      case START_OBJECT -> structure(depth);
      case START_ARRAY -> sequence(depth);
      case VALUE_STRING -> new Json.Text(whole(parser.getString()));
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> numeral();
      case VALUE_TRUE -> new Json.Truth(true);
      case VALUE_FALSE -> new Json.Truth(false);
      case VALUE_NULL -> new Json.Nothing();
      case NOT_AVAILABLE, END_OBJECT, END_ARRAY, PROPERTY_NAME, VALUE_EMBEDDED_OBJECT ->
          throw new IllegalStateException("no value begins with " + token);
    };
  }

  private Json structure(int depth) {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
      String name = whole(parser.currentName());
      Json value = value(parser.nextToken(), depth + 1);
      if (members.putIfAbsent(name, value) != null) {
        problems.add(place(), InputTrouble.TWICE);
      }
    }
    return new Json.Structure(members);
  }

  private Json sequence(int depth) {
    List<Json> items = new ArrayList<>();
    JsonToken token = parser.nextToken();
    while (token != JsonToken.END_ARRAY) {
      items.add(value(token, depth + 1));
      token = parser.nextToken();
    }
    return new Json.Sequence(items);
  }

  private Json numeral() {
    String literal = parser.getString();
    if (Character.isLetter(literal.charAt(literal.length() - 1))) {
      problems.add(place(), InputTrouble.NOT_FINITE);
      return new Json.NotJson();
    }
    return new Json.Numeral(literal);
  }

  private String whole(String text) {
    if (!isWhole(text)) {
      problems.add(place(), InputTrouble.BROKEN_TEXT);
    }
    return text;
  }

  /** Whether every surrogate has its other half. */
  private static boolean isWhole(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (Character.isSurrogate(text.charAt(i))) {
        if (!Character.isSupplementaryCodePoint(text.codePointAt(i))) {
          return false;
        }
        i++;
      }
    }
    return true;
  }

  /** Ends the reading of a document that is larger than the limits allow. */
  private static final class LimitPassed extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final InputTrouble trouble;
    private final int limit;

    LimitPassed(InputTrouble trouble, int limit) {
      super(trouble.key());
      this.trouble = trouble;
      this.limit = limit;
    }
  }
}
