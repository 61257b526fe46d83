package cistern.cli;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.JsonDocument;
import cistern.exchange.json.NumberRange;
import cistern.fact.Facts;
import cistern.gel.lanes.LanePlan;
import cistern.gel.score.GelTruth;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The file that says what is true of a folder of gels: {@code {"truth": 1, "gels": [{"file",
 * "group", "lanes": [{"name", "xCentre", "width"}], "pairs": [{"pair", "csfOnly", "pattern"}]}]}}.
 */
final class GelTruthFile {
  private final InputLimits limits;

  GelTruthFile(Facts facts) {
    this.limits = InputLimits.of(facts);
  }

  /** A file that does not say what is true of gels; the message is a sentence. */
  static final class NotTruth extends IOException {
    private static final long serialVersionUID = 1L;

    NotTruth(String sentence) {
      super(sentence);
    }
  }

  List<GelTruth> read(Path file) throws IOException {
    InputProblems problems = new InputProblems();
    try (InputStream in = Files.newInputStream(file)) {
      Optional<Fields> all =
          JsonDocument.read(in, limits, problems).map(d -> Fields.of(d, limits, problems));
      List<Fields> gels = all.map(f -> f.objects("gels")).orElse(List.of());
      if (gels.isEmpty()) {
        throw new NotTruth("it holds no gels: see the guide of the gel for its form");
      }
      return gels.stream().map(GelTruthFile::gel).toList();
    } catch (IllegalArgumentException e) {
      throw new NotTruth(String.valueOf(e.getMessage()));
    }
  }

  private static GelTruth gel(Fields gel) {
    List<Fields> lanes = gel.objects("lanes");
    LanePlan names = LanePlan.parse(lanes.stream().map(l -> l.text("name").orElse("")).toList());
    List<GelTruth.Place> places =
        lanes.stream()
            .filter(l -> !l.text("name").orElse("").equals("blank"))
            .filter(l -> l.isGiven("xCentre"))
            .map(l -> new GelTruth.Place(number(l, "xCentre"), number(l, "width")))
            .toList();
    return new GelTruth(
        gel.text("file").orElse(""),
        gel.text("group").orElse("all"),
        names,
        places,
        gel.objects("pairs").stream().map(GelTruthFile::pair).toList());
  }

  private static double number(Fields of, String name) {
    return of.number(name, NumberRange.ANY).orElse(0);
  }

  private static GelTruth.Pair pair(Fields pair) {
    return new GelTruth.Pair(
        pair.count("pair").orElse(0), maybe(pair, "csfOnly"), maybe(pair, "pattern"));
  }

  private static OptionalInt maybe(Fields of, String name) {
    boolean isNumber =
        of.value(name).filter(v -> v instanceof cistern.exchange.json.Json.Numeral).isPresent();
    return isNumber ? of.count(name) : OptionalInt.empty();
  }
}
