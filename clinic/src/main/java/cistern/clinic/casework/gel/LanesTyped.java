package cistern.clinic.casework.gel;

import cistern.clinic.setting.Setting;
import cistern.gel.image.Posture;
import cistern.gel.lanes.LaneKind;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.PairReading;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What stands in the fields of all lanes of a gel.
 *
 * @param rows one for each lane, from the left, and one for a lane that nobody found
 * @param pair this person's pair, as typed
 * @param troubles what is wrong, by field
 */
record LanesTyped(List<Row> rows, String pair, Map<String, String> troubles) {

  static final String KIND = "lane-kind";
  static final String NUMBER = "lane-pair";
  static final String CENTRE = "lane-x";
  static final String WIDTH = "lane-width";
  static final String OWN = "lanes-own";

  private static final List<String> COLUMNS = List.of(KIND, NUMBER, CENTRE, WIDTH);

  private static final String UNREAD =
      "Typed here and not read yet: press “Read with the lanes as placed” first.";

  /** Where a person says that nothing is there to be read. */
  static final String NONE = "none";

  LanesTyped {
    rows = List.copyOf(rows);
    troubles = Map.copyOf(troubles);
  }

  /**
   * One lane as typed.
   *
   * @param kind the word of what is on it, empty while nobody said
   * @param pair the number of its pair
   * @param centre of it at the picture's mid-height, in pixels
   * @param width in pixels
   */
  record Row(String kind, String pair, String centre, String width) {
    static final Row EMPTY = new Row(NONE, "", "", "");

    /** In the order of the columns, numbers as they are compared. */
    private List<String> cells() {
      return List.of(kind, pair, same(centre), same(width));
    }

    private static String same(String typed) {
      OptionalDouble number = LanePoint.parse(typed);
      return number.isPresent() ? LanePoint.number(number.getAsDouble()) : typed;
    }

    private boolean isSample() {
      return kind.equals(LaneKind.CSF.word()) || kind.equals(LaneKind.SERUM.word());
    }

    private String toWords() {
      return kind + (isSample() ? ":" + pair : "") + "@" + plain(centre) + "/" + plain(width);
    }
  }

  /** The lanes as they were read; a lane whose name nobody said is what its pair takes it for. */
  static LanesTyped of(GelReading reading, int pair) {
    List<Row> rows = new ArrayList<>();
    reading.lanes().forEach(lane -> rows.add(row(reading, lane)));
    rows.add(Row.EMPTY);
    return new LanesTyped(rows, Integer.toString(pair), Map.of());
  }

  private static Row row(GelReading reading, LaneReading lane) {
    OptionalInt index = OptionalInt.of(lane.index());
    Optional<PairReading> own =
        reading.pairs().stream()
            .filter(p -> p.csfLane().equals(index) || p.serumLane().equals(index))
            .findFirst();
    String taken =
        own.map(p -> p.csfLane().equals(index) ? LaneKind.CSF : LaneKind.SERUM)
            .map(LaneKind::word)
            .orElse("");
    return new Row(
        lane.kind() == LaneKind.UNKNOWN ? taken : lane.kind().word(),
        own.map(p -> Integer.toString(p.pair())).orElse(""),
        tenths(lane.xCentre()),
        tenths(lane.width()));
  }

  private static String tenths(double pixels) {
    return LanePoint.number(Math.round(10 * pixels) / 10.0);
  }

  /** What a form says of the lanes of a picture, with what is wrong. */
  static LanesTyped of(Map<String, List<String>> fields, GelReading reading) {
    LanesTyped typed = typed(fields);
    return typed.with(troubles(typed.rows, typed.pair, pixels(reading)));
  }

  private static LanesTyped typed(Map<String, List<String>> fields) {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < fields.getOrDefault(KIND, List.of()).size(); i++) {
      rows.add(
          new Row(
              at(fields, KIND, i),
              at(fields, NUMBER, i),
              at(fields, CENTRE, i),
              at(fields, WIDTH, i)));
    }
    return new LanesTyped(rows, at(fields, OWN, 0), Map.of());
  }

  private LanesTyped with(Map<String, String> others) {
    return new LanesTyped(rows, pair, others);
  }

  /** The columns of the upright picture. */
  private static double pixels(GelReading reading) {
    boolean isAcross = reading.picture().posture() == Posture.ACROSS;
    return isAcross ? reading.picture().height() : reading.picture().width();
  }

  /** What a form says otherwise of the lanes than they were read; nothing where it agrees. */
  static Optional<LanesTyped> unread(Map<String, List<String>> fields, LanesTyped read) {
    LanesTyped typed = typed(fields);
    if (typed.rows.isEmpty()) {
      return Optional.empty();
    }
    if (typed.rows.size() != read.rows.size()) {
      return Optional.of(typed.with(Map.of(OWN, UNREAD)));
    }
    Map<String, String> unread = new HashMap<>();
    for (int i = 0; i < typed.rows.size(); i++) {
      List<String> now = typed.rows.get(i).cells();
      List<String> then = read.rows.get(i).cells();
      for (int column = 0; column < COLUMNS.size(); column++) {
        if (!now.get(column).equals(then.get(column))) {
          unread.put(id(COLUMNS.get(column), i), UNREAD);
        }
      }
    }
    if (!typed.pair.equals(read.pair)) {
      unread.put(OWN, UNREAD);
    }
    return unread.isEmpty() ? Optional.empty() : Optional.of(typed.with(unread));
  }

  private static String at(Map<String, List<String>> fields, String name, int row) {
    List<String> values = fields.getOrDefault(name, List.of());
    return row < values.size() ? values.get(row).strip() : "";
  }

  /** The field of a lane. */
  static String id(String name, int row) {
    return name + "-" + row;
  }

  private static Map<String, String> troubles(List<Row> rows, String own, double pixels) {
    Map<String, String> troubles = new HashMap<>();
    Set<String> taken = new HashSet<>();
    int most = Setting.LANES_PLACED.number();
    if (rows.stream().filter(r -> !r.kind().equals(NONE)).count() > most) {
      troubles.put(OWN, "At most " + most + " lanes of one picture can be placed.");
    }
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      if (row.kind().isEmpty()) {
        troubles.put(id(KIND, i), "Say what is on lane " + (i + 1) + ".");
      } else if (!row.kind().equals(NONE)) {
        checkPlace(i, row, pixels, troubles);
        checkPair(i, row, taken, troubles);
      }
    }
    boolean isOwn = rows.stream().anyMatch(r -> r.isSample() && r.pair().equals(own));
    if (!isOwn && troubles.isEmpty()) {
      troubles.put(OWN, "No lane of fluid or serum bears this number.");
    }
    return troubles;
  }

  private static void checkPlace(int i, Row row, double pixels, Map<String, String> troubles) {
    if (!isWithin(row.centre(), 0, pixels)) {
      troubles.put(id(CENTRE, i), "A number from 0 to " + LanePoint.number(pixels) + ".");
    }
    if (!isWithin(row.width(), 1, pixels)) {
      troubles.put(id(WIDTH, i), "A number from 1 to " + LanePoint.number(pixels) + ".");
    }
  }

  private static boolean isWithin(String typed, double least, double most) {
    OptionalDouble number = LanePoint.parse(typed);
    return number.isPresent() && number.getAsDouble() >= least && number.getAsDouble() <= most;
  }

  private static void checkPair(int i, Row row, Set<String> taken, Map<String, String> troubles) {
    if (row.isSample() && !row.pair().matches("\\d{1,4}")) {
      troubles.put(id(NUMBER, i), "The number of its pair, 0 for the first.");
    } else if (row.isSample() && !taken.add(row.kind() + row.pair())) {
      troubles.put(id(NUMBER, i), "Pair " + row.pair() + " has a lane of this kind already.");
    }
  }

  private static String plain(String number) {
    return number.replace(',', '.');
  }

  /**
   * The placement that is typed, when nothing is wrong with it.
   *
   * @param across what stands in the form of the bands before it
   */
  Optional<Placement> placement(String across) {
    return troubles.isEmpty()
        ? Optional.of(
            new Placement(
                LanePlan.parse(
                    rows.stream().filter(r -> !r.kind().equals(NONE)).map(Row::toWords).toList()),
                Integer.parseInt(pair),
                across))
        : Optional.empty();
  }
}
