package cistern.exchange.workup;

import cistern.bands.BandReport;
import cistern.cohort.Recorded;
import cistern.exchange.json.Fields;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.Json;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads what a valid work-up keeps for a cohort: what became of it, and a second reading. */
public final class RecordedReader {

  private static final String UNKNOWN = "unknown";
  private static final String AMENDED = "amended";

  private final InputLimits limits;
  private final BandsReader bands;

  private RecordedReader(Facts facts) {
    limits = InputLimits.of(facts);
    bands = new BandsReader(facts);
  }

  /** A reader under some facts. */
  public static RecordedReader of(Facts facts) {
    return new RecordedReader(facts);
  }

  /** What a work-up keeps. */
  public Recorded read(Json.Structure document) {
    Fields fields = Fields.of(document, limits, new InputProblems());
    BandReport second = bands.read(fields, BandsReader.SECOND);
    return new Recorded(
        text(document, "finalDiagnosis").filter(d -> !d.equals(UNKNOWN)),
        amended(document),
        second instanceof BandReport.NotReported ? Optional.empty() : Optional.of(second));
  }

  private static Stream<String> status(Json result) {
    return result instanceof Json.Structure one ? text(one, "status").stream() : Stream.empty();
  }

  private static Optional<String> text(Json.Structure document, String name) {
    return document.members().get(name) instanceof Json.Text(String text)
        ? Optional.of(text.strip()).filter(t -> !t.isEmpty())
        : Optional.empty();
  }

  /** Whether a result says that it was corrected; unknown when none says how final it is. */
  private static Answer amended(Json.Structure document) {
    List<String> all =
        document.members().get("results") instanceof Json.Sequence(List<Json> results)
            ? results.stream().flatMap(RecordedReader::status).toList()
            : List.of();
    if (all.isEmpty()) {
      return Answer.UNKNOWN;
    }
    return all.contains(AMENDED) ? Answer.YES : Answer.NO;
  }
}
