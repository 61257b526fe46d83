package cistern.exchange.workup;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.bands.BandReport.Counted;
import cistern.bands.BandReport.Origin;
import cistern.bands.BandVerdict;
import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.json.NumberRange;
import cistern.exchange.workup.BandStatementNotUsed.Reason;
import cistern.fact.Facts;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Reads what a work-up says of the bands: counts, a pattern, a result, or the picture of a gel. */
final class BandsReader {

  /** The reading of the same gel by the program or by a second person. */
  static final String SECOND = "secondReading";

  private final Facts facts;

  BandsReader(Facts facts) {
    this.facts = facts;
  }

  BandReport read(Fields workup) {
    return read(workup, "bands");
  }

  /** What one of the two readings of a gel says. */
  BandReport read(Fields workup, String name) {
    return workup.object(name).map(this::report).orElse(new BandReport.NotReported());
  }

  private BandReport report(Fields bands) {
    Origin origin = new Origin(bands.text("method"), bands.text("readBy"));
    int most = (int) facts.number("input.bands-most");
    BandCounts counts =
        new BandCounts(
            bands.count("csfOnly", most),
            bands.count("shared", most),
            bands.count("serumOnly", most));
    Optional<BandPattern> pattern = pattern(bands);
    Optional<Boolean> result =
        bands.word("result", BandsReader::result, List.of("positive", "negative"));
    Optional<String> gel = bands.text("gel");
    List<String> lanes = lanes(bands);
    OptionalInt pair = bands.count("pair");
    Optional<String> confirmedBy = confirmedBy(bands);
    bands.keep("struck", "added", "ladder");
    bands.checkNoOthers();
    boolean isCounted = !counts.equals(BandCounts.NONE);
    Optional<Counted> counted =
        isCounted
            ? Optional.of(new Counted(counts, pattern, origin, Optional.empty()))
            : Optional.empty();
    BandReport report =
        gel.<BandReport>map(
                picture ->
                    new BandReport.GelNamed(picture, lanes, pair.orElse(0), confirmedBy, counted))
            .or(() -> counted)
            .or(() -> pattern.map(p -> new BandReport.Patterned(p, origin)))
            .or(() -> result.map(r -> new BandReport.Concluded(r, origin)))
            .orElse(new BandReport.NotReported());
    checkUsed(bands, report, result);
    return report;
  }

  /** Notes a pattern or a result that is given but has no part in what is used. */
  private void checkUsed(Fields bands, BandReport report, Optional<Boolean> result) {
    boolean isOnlyPicture = report instanceof BandReport.GelNamed named && named.edit().isEmpty();
    if (isOnlyPicture) {
      Stream.of("pattern", "result")
          .filter(bands::isGiven)
          .map(name -> new BandStatementNotUsed(bands.place(name).path(), Reason.PICTURE))
          .forEach(bands.problems()::add);
      return;
    }
    BandVerdict verdict = BandReading.of(report, facts).verdict();
    boolean isContradicted =
        result.isPresent()
            && verdict == (result.get() ? BandVerdict.NEGATIVE : BandVerdict.POSITIVE);
    if (isContradicted) {
      bands.problems().add(new BandStatementNotUsed(bands.place("result").path(), Reason.COUNTS));
    }
  }

  /** A list of lane kinds, the same in one text with commas, or a list of lanes with places. */
  private static List<String> lanes(Fields bands) {
    Optional<Json> lanes = bands.value("lanes");
    if (lanes.filter(v -> v instanceof Json.Text).isPresent()) {
      return List.of(bands.text("lanes").orElse("").split(",", -1));
    }
    boolean isPlaced =
        lanes
            .filter(
                v ->
                    v instanceof Json.Sequence list
                        && list.items().stream().anyMatch(BandsReader::isObject))
            .isPresent();
    return isPlaced
        ? bands.objects("lanes").stream().map(BandsReader::placed).toList()
        : bands.texts("lanes");
  }

  private static boolean isObject(Json item) {
    return item instanceof Json.Structure;
  }

  /** A lane as a file of lanes gives it, in words. */
  private static String placed(Fields lane) {
    lane.checkGiven("kind", "xCentre", "width");
    OptionalInt pair = lane.count("pair");
    String words =
        lane.text("kind").orElse("")
            + (pair.isPresent() ? ":" + pair.getAsInt() : "")
            + "@"
            + pixels(lane, "xCentre", NumberRange.NOT_NEGATIVE)
            + "/"
            + pixels(lane, "width", NumberRange.POSITIVE);
    lane.checkNoOthers();
    return words;
  }

  private static String pixels(Fields lane, String name, NumberRange range) {
    return lane.decimal(name, range).map(BigDecimal::toPlainString).orElse("");
  }

  private static Optional<String> confirmedBy(Fields bands) {
    Optional<String> name = bands.text("confirmedBy");
    if (name.isPresent() && name.get().isBlank()) {
      bands.add("confirmedBy", InputTrouble.BLANK);
    }
    return name.filter(n -> !n.isBlank());
  }

  private static Optional<BandPattern> pattern(Fields bands) {
    OptionalInt number = bands.count("pattern");
    Optional<BandPattern> pattern =
        number.isPresent() ? BandPattern.parse(number.getAsInt()) : Optional.empty();
    if (number.isPresent() && pattern.isEmpty()) {
      bands.add("pattern", InputTrouble.ILL_FORMED, "a pattern from 1 to 5");
    }
    return pattern;
  }

  private static Optional<Boolean> result(String word) {
    return switch (word) {
      case "positive" -> Optional.of(true);
      case "negative" -> Optional.of(false);
      default -> Optional.empty();
    };
  }
}
