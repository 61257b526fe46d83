package cistern.exchange.hl7v2;

import cistern.exchange.lab.Coding;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.Moment;
import cistern.exchange.lab.ReportedResult;
import cistern.exchange.lab.ReportedResult.Range;
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
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** One OBR with its OBX and SPM segments. */
final class OrderGroup {

  private static final List<String> LOINC_NAMES = List.of("LN", "LOINC", "http://loinc.org");
  private static final String OWN_NAME = "99CISTERN";
  private static final String UCUM = "UCUM";

  /**
   * The type of a comment that repeats a value with its own digits: a number of HL7 has no power of
   * ten, so that 1.2E3 goes out as 1200 and would come back with two digits more.
   */
  static final String DIGITS = "digits^the digits of the value^" + OWN_NAME;

  /** The field of an order that names its specimen, before there was a segment for it. */
  private static final int SOURCE = 15;

  private static final Pattern TEN = Pattern.compile("[x×*]?\\s?10");
  private static final Pattern PER = Pattern.compile("\\d{1,2}\\s?/.*");
  private static final Pattern WHOLE = Pattern.compile("([<>]?=?)(\\d{1,999})");
  private static final Pattern POWER = Pattern.compile("\\d+(\\.\\d+)?[eE]\\+?\\d{1,3}");

  private final Optional<Segment> order;
  private final Optional<ZoneOffset> zone;
  private final List<Segment> observations = new ArrayList<>();
  private final List<Segment> specimens = new ArrayList<>();
  private final Map<Integer, String> digits = new HashMap<>();

  /** Most observations of an order have one time, which is read once. */
  private final Map<String, Optional<Moment>> times = new HashMap<>();

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
        specimens.isEmpty() ? order.map(obr -> names(obr, SOURCE)).orElse(List.of()) : List.of();
    return new ReportedSpecimen(source, drawn, order.flatMap(obr -> time(obr.component(14, 1))));
  }

  /** Code, name, alternative code and name of a field; of a source its code, name and free text. */
  private static List<String> names(Segment segment, int field) {
    String first = segment.repetitions(field).getFirst();
    List<String> components = Delimiters.split(first, segment.delimiters().component());
    List<String> names = new ArrayList<>();
    if (field == SOURCE) {
      Delimiters.split(components.getFirst(), segment.delimiters().subcomponent())
          .forEach(part -> names.add(segment.delimiters().unescaped(part)));
    }
    for (int component : field == SOURCE ? List.of(2, 3) : List.of(1, 2, 4, 5)) {
      names.add(segment.component(first, component));
    }
    return names.stream().map(String::strip).filter(n -> !n.isEmpty()).distinct().toList();
  }

  /** The times that cannot be read: a draw without one is no help, and nobody is left to wonder. */
  List<LeftOver> unclearTimes() {
    List<LeftOver> unclear = new ArrayList<>();
    order.ifPresent(obr -> unclear.addAll(unclear(obr, 7, 14)));
    specimens.forEach(spm -> unclear.addAll(unclear(spm, 17, 18)));
    observations.forEach(obx -> unclear.addAll(unclear(obx, 14, 19)));
    return unclear;
  }

  private List<LeftOver> unclear(Segment segment, int... fields) {
    return IntStream.of(fields)
        .filter(f -> !segment.component(f, 1).isEmpty() && time(segment.component(f, 1)).isEmpty())
        .mapToObj(f -> new LeftOver(segment.place(f), Why.TIME_UNCLEAR, "", segment.text(f), ""))
        .toList();
  }

  private Optional<Moment> time(String text) {
    return times.computeIfAbsent(text, written -> Hl7Time.parse(written, zone));
  }

  private ReportedResult result(Segment obx, ReportedSpecimen specimen) {
    List<String> units = units(obx);
    return new ReportedResult(
        obx.place(5),
        codings(obx),
        specimen.takenAt(time(obx.component(14, 1))),
        value(obx),
        units.isEmpty() ? "" : units.getFirst(),
        standing(obx),
        new Remarks(
            time(obx.component(19, 1)),
            Optional.of(obx.text(7))
                .filter(t -> !t.isEmpty())
                .map(text -> new Range(obx.place(7), text, List.of())),
            method(obx),
            Optional.empty(),
            units));
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

  /**
   * The unit and what else is said of it, a code of UCUM first. A power of ten written with the
   * sign of a component is put together again.
   */
  private static List<String> units(Segment obx) {
    if (obx.raw(6).indexOf(obx.delimiters().component()) < 0) {
      return Stream.of(obx.component(6, 1)).filter(text -> !text.isEmpty()).toList();
    }
    String code = obx.component(6, 1);
    String second = obx.component(6, 2);
    if (!second.isEmpty() && TEN.matcher(code).matches() && PER.matcher(second).matches()) {
      return List.of(code + "^" + second);
    }
    boolean isOtherUcum = obx.component(6, 6).equals(UCUM) && !obx.component(6, 3).equals(UCUM);
    Stream<Integer> order = isOtherUcum ? Stream.of(4, 1, 2, 5) : Stream.of(1, 2, 4, 5);
    return order.map(c -> obx.component(6, c)).filter(text -> !text.isEmpty()).toList();
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
