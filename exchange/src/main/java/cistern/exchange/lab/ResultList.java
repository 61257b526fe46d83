package cistern.exchange.lab;

import cistern.exchange.json.Json;
import cistern.exchange.lab.Fluids.Fluid;
import cistern.exchange.lab.ReportedResult.Standing;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * The {@code results} and the {@code serology} of a work-up, with what is kept for a round trip.
 */
final class ResultList {

  private static final String PLASMA = "plasma";

  private ResultList() {}

  static void add(
      List<ReadResult> understood, SequencedMap<String, Json> members, Map<String, String> places) {
    List<Json> results = new ArrayList<>();
    List<Json> serology = new ArrayList<>();
    for (ReadResult one : understood) {
      if (one.number().isPresent()) {
        places.put("results[" + results.size() + "]", one.from().place());
        results.add(result(one, one.number().get()));
      } else if (one.subject().startsWith("serology.")) {
        places.put("serology[" + serology.size() + "]", one.from().place());
        serology.add(serology(one));
      }
    }
    members.put("results", new Json.Sequence(results));
    if (!serology.isEmpty()) {
      members.put("serology", new Json.Sequence(serology));
    }
  }

  private static Json result(ReadResult one, NumberText number) {
    ReportedResult from = one.from();
    SequencedMap<String, Json> result = new LinkedHashMap<>();
    result.put("analyte", new Json.Text(one.subject()));
    one.in().ifPresent(in -> result.put("in", new Json.Text(in.code())));
    result.put(number.kind().field(), new Json.Numeral(number.literal()));
    result.put("unit", new Json.Text(one.unit()));
    one.tube().ifPresent(tube -> result.put("tube", new Json.Text(tube)));
    text(result, "assay", assay(one));
    text(result, "at", from.remarks().measuredAt().flatMap(Moment::toText));
    if (from.standing() != Standing.FINAL) {
      result.put("status", new Json.Text(from.standing().word()));
    }
    text(result, "reportedLimit", from.remarks().range().map(ReportedResult.Range::text));
    from.codes().stream()
        .filter(c -> !c.system().equals(Coding.OWN) && !c.code().isEmpty())
        .findFirst()
        .ifPresent(c -> original(result, c));
    return new Json.Structure(result);
  }

  /**
   * The method, and that the specimen was plasma where the value is judged alone: what is compared
   * with CSF is compared with serum or plasma alike.
   */
  private static Optional<String> assay(ReadResult one) {
    Optional<String> method = one.from().remarks().method().filter(m -> !m.isBlank());
    boolean isAlone = Analyte.parse(one.subject()).filter(a -> !a.isPaired()).isPresent();
    boolean isSaid = method.filter(m -> m.toLowerCase(Locale.ROOT).contains(PLASMA)).isPresent();
    boolean isPlasma =
        isAlone
            && !isSaid
            && one.isIn(Compartment.SERUM)
            && Fluids.of(one.from().specimen().words()).equals(Optional.of(Fluid.PLASMA));
    return isPlasma ? Optional.of(method.map(m -> m + ", " + PLASMA).orElse(PLASMA)) : method;
  }

  private static void original(SequencedMap<String, Json> result, Coding coding) {
    result.put("originalCode", new Json.Text(coding.code()));
    if (!coding.text().isEmpty()) {
      result.put("originalText", new Json.Text(coding.text()));
    }
  }

  private static Json serology(ReadResult one) {
    SequencedMap<String, Json> entry = new LinkedHashMap<>();
    entry.put("test", new Json.Text(one.subject().substring("serology.".length())));
    one.in().ifPresent(in -> entry.put("in", new Json.Text(in.code())));
    entry.put("result", new Json.Text(one.word()));
    return new Json.Structure(entry);
  }

  private static void text(SequencedMap<String, Json> result, String name, Optional<String> value) {
    value.filter(v -> !v.isBlank()).ifPresent(v -> result.put(name, new Json.Text(v)));
  }
}
