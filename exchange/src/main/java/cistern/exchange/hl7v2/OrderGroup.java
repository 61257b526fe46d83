package cistern.exchange.hl7v2;

import cistern.exchange.lab.Coding;
import cistern.exchange.lab.Moment;
import cistern.exchange.lab.ReportedResult;
import cistern.exchange.lab.ReportedResult.Remarks;
import cistern.exchange.lab.ReportedResult.Standing;
import cistern.exchange.lab.ReportedSpecimen;
import java.math.BigDecimal;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** One OBR with its OBX and SPM segments. */
final class OrderGroup {

  private static final List<String> LOINC_NAMES = List.of("LN", "LOINC", "http://loinc.org");
  private static final String OWN_NAME = "99CISTERN";

  /**
   * The type of a comment that repeats a value with its own digits: a number of HL7 has no power of
   * ten, so that 1.2E3 goes out as 1200 and would come back with two digits more.
   */
  static final String DIGITS = "digits^the digits of the value^" + OWN_NAME;

  private static final Pattern TEN = Pattern.compile("[x×*]?\\s?10");
  private static final Pattern PER = Pattern.compile("\\d{1,2}\\s?/.*");
  private static final Pattern WHOLE = Pattern.compile("([<>]?=?)(\\d{1,999})");
  private static final Pattern POWER = Pattern.compile("\\d+(\\.\\d+)?[eE]\\+?\\d{1,3}");

  private final Optional<Segment> order;
  private final Optional<ZoneOffset> zone;
  private final List<Segment> observations = new ArrayList<>();
  private final List<Segment> specimens = new ArrayList<>();
  private final Map<Integer, String> digits = new HashMap<>();

  OrderGroup(Optional<Segment> order, Optional<ZoneOffset> zone) {
    this.order = order;
    this.zone = zone;
  }

  void add(Segment segment) {
    (segment.name().equals("SPM") ? specimens : observations).add(segment);
  }

  /** Takes a comment that holds the digits of the observation before it; false for any other. */
  boolean takesDigits(Segment note) {
    boolean isOurs = note.component(4, 1).equals("digits") && note.component(4, 3).equals(OWN_NAME);
    if (isOurs && !observations.isEmpty()) {
      digits.put(observations.getLast().line(), note.text(3));
    }
    return isOurs;
  }

  /** The system of codes under which ours are sent. */
  static String ownSystem() {
    return OWN_NAME;
  }

  /** The results of the order. */
  List<ReportedResult> results() {
    ReportedSpecimen specimen = specimen();
    return observations.stream()
        .filter(obx -> !obx.component(2, 1).equals("ED") && !obx.component(2, 1).equals("RP"))
        .map(obx -> result(obx, specimen))
        .toList();
  }

  private ReportedSpecimen specimen() {
    Optional<Moment> drawn = order.flatMap(obr -> time(obr.component(7, 1)));
    if (specimens.size() == 1) {
      Segment spm = specimens.getFirst();
      return new ReportedSpecimen(
              names(spm, 4), time(spm.component(17, 1)), time(spm.component(18, 1)))
          .takenAt(drawn);
    }
    List<String> source =
        specimens.isEmpty() ? order.map(obr -> names(obr, 15)).orElse(List.of()) : List.of();
    return new ReportedSpecimen(source, drawn, order.flatMap(obr -> time(obr.component(14, 1))));
  }

  /** Code, name, alternative code and name of a field. */
  private static List<String> names(Segment segment, int field) {
    String first = segment.repetitions(field).getFirst();
    List<String> components = Delimiters.split(first, segment.delimiters().component());
    List<String> names = new ArrayList<>();
    if (field == 15 && !components.isEmpty()) {
      Delimiters.split(components.getFirst(), segment.delimiters().subcomponent())
          .forEach(part -> names.add(segment.delimiters().unescaped(part)));
    }
    for (int component : List.of(1, 2, 4, 5)) {
      names.add(segment.component(first, component));
    }
    return names.stream().map(String::strip).filter(n -> !n.isEmpty()).distinct().toList();
  }

  private Optional<Moment> time(String text) {
    return Hl7Time.parse(text, zone);
  }

  private ReportedResult result(Segment obx, ReportedSpecimen specimen) {
    return new ReportedResult(
        obx.place(5),
        codings(obx),
        specimen.takenAt(time(obx.component(14, 1))),
        value(obx),
        unit(obx),
        standing(obx),
        new Remarks(
            time(obx.component(19, 1)),
            Optional.of(obx.text(7)).filter(t -> !t.isEmpty()),
            method(obx),
            Optional.empty()));
  }

  /** The value, with the digits of its comment where that is the same number. */
  private String value(Segment obx) {
    String sent = Hl7Value.of(obx);
    String power = digits.getOrDefault(obx.line(), "");
    Matcher whole = WHOLE.matcher(sent);
    boolean isSame =
        whole.matches()
            && POWER.matcher(power).matches()
            && new BigDecimal(power).compareTo(new BigDecimal(whole.group(2))) == 0;
    return isSame ? whole.group(1) + power : sent;
  }

  private static Optional<String> method(Segment obx) {
    return Stream.of(obx.component(17, 2), obx.component(17, 1))
        .filter(text -> !text.isEmpty())
        .findFirst();
  }

  private static List<Coding> codings(Segment obx) {
    List<Coding> codings = new ArrayList<>();
    for (int first : List.of(1, 4)) {
      String code = obx.component(3, first);
      String text = obx.component(3, first + 1);
      if (!code.isEmpty() || !text.isEmpty()) {
        codings.add(new Coding(system(obx.component(3, first + 2)), code, text));
      }
    }
    return codings;
  }

  private static String system(String name) {
    if (LOINC_NAMES.contains(name)) {
      return Coding.LOINC;
    }
    return name.equals(OWN_NAME) ? Coding.OWN : name;
  }

  /** The unit; a power of ten written with the sign of a component is put together again. */
  private static String unit(Segment obx) {
    String code = obx.component(6, 1);
    String second = obx.component(6, 2);
    boolean isPower =
        !second.isEmpty() && TEN.matcher(code).matches() && PER.matcher(second).matches();
    return isPower ? code + "^" + second : code.isEmpty() ? second : code;
  }

  private Standing standing(Segment obx) {
    String status = obx.component(11, 1);
    String either = status.isEmpty() ? order.map(o -> o.component(25, 1)).orElse("") : status;
    return switch (either) {
      case "C" -> Standing.AMENDED;
      case "P", "R", "S", "A", "B", "V" -> Standing.PRELIMINARY;
      case "X", "D", "W" -> Standing.CANCELLED;
      case "I", "O", "N" -> Standing.AWAITED;
      default -> Standing.FINAL;
    };
  }
}
