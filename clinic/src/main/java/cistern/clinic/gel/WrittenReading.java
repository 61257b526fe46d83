package cistern.clinic.gel;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.exchange.json.Fields;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.JsonDocument;
import cistern.exchange.json.NumberRange;
import cistern.fact.Facts;
import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.lanes.LaneKind;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.GelReading.PictureSeen;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.LaneReading.Quality;
import cistern.gel.reading.PairReading;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** A reading in the form in which the reader writes it, read back. */
final class WrittenReading {

  private WrittenReading() {}

  /** The reading of a text that the reader wrote; any other text is a fault of the program. */
  static GelReading parse(String text, Facts facts) {
    InputLimits limits = InputLimits.of(facts);
    InputProblems problems = new InputProblems();
    return JsonDocument.read(
            new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), limits, problems)
        .map(document -> reading(Fields.of(document, limits, problems)))
        .orElseThrow(WrittenReading::foreign);
  }

  private static IllegalStateException foreign() {
    return new IllegalStateException("only readings of the reader are kept");
  }

  private static GelReading reading(Fields all) {
    Fields image = all.object("image").orElseThrow(WrittenReading::foreign);
    PictureSeen seen =
        new PictureSeen(
            image.text("file").orElse(""),
            whole(image, "width"),
            whole(image, "height"),
            image.text("polarity").filter("light-on-dark"::equals).isPresent()
                ? Polarity.LIGHT_ON_DARK
                : Polarity.DARK_ON_LIGHT,
            image.text("lanes").filter("across"::equals).isPresent()
                ? Posture.ACROSS
                : Posture.UPRIGHT);
    return new GelReading(
        seen,
        all.objects("lanes").stream().map(WrittenReading::lane).toList(),
        all.objects("pairs").stream().map(WrittenReading::pair).toList(),
        problems(all));
  }

  private static LaneReading lane(Fields lane) {
    return new LaneReading(
        whole(lane, "index"),
        lane.text("kind").flatMap(LaneKind::parse).orElse(LaneKind.UNKNOWN),
        maybe(lane, "pair"),
        number(lane, "xCentre"),
        number(lane, "width"),
        number(lane, "slope"),
        quality(lane.text("quality").orElse("")),
        problems(lane),
        lane.objects("bands").stream().map(WrittenReading::band).toList(),
        lane.text("place").filter("given"::equals).isPresent());
  }

  private static Quality quality(String word) {
    return Arrays.stream(Quality.values())
        .filter(q -> q.word().equals(word))
        .findFirst()
        .orElse(Quality.UNREADABLE);
  }

  private static BandMark band(Fields band) {
    return new BandMark(
        number(band, "y"),
        number(band, "height"),
        number(band, "strength"),
        maybe(band, "matched"),
        number(band, "probability"),
        band.text("reason").orElse(""));
  }

  private static PairReading pair(Fields pair) {
    return new PairReading(
        whole(pair, "pair"),
        maybe(pair, "csfLane"),
        maybe(pair, "serumLane"),
        counts(pair),
        pattern(pair),
        verdict(pair.text("verdict").orElse("")),
        review(pair),
        problems(pair));
  }

  /**
   * Why a person must look; a reading written before reasons were kept only says that they must.
   */
  private static List<String> review(Fields pair) {
    List<String> reasons = pair.texts("review");
    boolean isUnsaid = reasons.isEmpty() && pair.truth("needsReview").orElse(true);
    return isUnsaid ? List.of("the reading must be looked at") : reasons;
  }

  private static Optional<PairReading.Counts> counts(Fields pair) {
    return maybe(pair, "csfOnly").isEmpty()
        ? Optional.empty()
        : Optional.of(
            new PairReading.Counts(
                whole(pair, "csfOnly"),
                whole(pair, "shared"),
                whole(pair, "serumOnly"),
                pair.numbers("csfOnlyDistribution", NumberRange.FRACTION),
                number(pair, "probabilityPositive"),
                pair.numbers("probabilityOfPattern", NumberRange.FRACTION)));
  }

  private static Optional<BandPattern> pattern(Fields pair) {
    OptionalInt number = maybe(pair, "pattern");
    return number.isPresent() ? BandPattern.parse(number.getAsInt()) : Optional.empty();
  }

  private static BandVerdict verdict(String word) {
    return Arrays.stream(BandVerdict.values())
        .filter(v -> v.word().equals(word))
        .findFirst()
        .orElse(BandVerdict.UNDETERMINED);
  }

  private static List<GelProblem> problems(Fields of) {
    return of.objects("problems").stream().flatMap(p -> problem(p).stream()).toList();
  }

  private static Optional<GelProblem> problem(Fields problem) {
    String word = problem.text("code").orElse("");
    return Arrays.stream(GelProblem.Code.values())
        .filter(c -> c.word().equals(word))
        .findFirst()
        .map(code -> new GelProblem(code, problem.text("text").orElse("")));
  }

  /** A number that is there, or null where there is none. */
  private static OptionalInt maybe(Fields of, String name) {
    boolean isNumber =
        of.value(name).filter(v -> v instanceof cistern.exchange.json.Json.Numeral).isPresent();
    return isNumber ? of.count(name) : OptionalInt.empty();
  }

  private static int whole(Fields of, String name) {
    return maybe(of, name).orElseThrow(WrittenReading::foreign);
  }

  private static double number(Fields of, String name) {
    return of.number(name, NumberRange.ANY).orElseThrow(WrittenReading::foreign);
  }
}
