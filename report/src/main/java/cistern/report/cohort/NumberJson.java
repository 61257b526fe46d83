package cistern.report.cohort;

import cistern.cohort.Distribution;
import cistern.cohort.NumberSummary;
import cistern.finding.FindingCode;
import cistern.report.json.IndentedJson;
import cistern.report.json.JsonObject;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;

/** The numbers of a cohort as one JSON object; nothing is rounded. */
public final class NumberJson {

  private static final int VERSION = 1;
  private static final double MIDDLE = 0.5;
  private static final double TAIL = 0.025;

  private NumberJson() {}

  /**
   * Writes {@code summary.json} into a folder, whole or not at all.
   *
   * @param made what made it
   * @param refused how many rows are left out
   */
  public static void write(Path folder, CohortReport.Made made, NumberSummary summary, long refused)
      throws IOException {
    Files.createDirectories(folder);
    Path part = Files.createTempFile(folder, ".summary", ".part");
    try {
      try (OutputStream out = Files.newOutputStream(part)) {
        IndentedJson.write(
            out, json -> JsonObject.write(json, object -> write(object, made, summary, refused)));
      }
      Files.move(
          part,
          folder.resolve("summary.json"),
          StandardCopyOption.ATOMIC_MOVE,
          StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private static void write(
      JsonObject json, CohortReport.Made made, NumberSummary summary, long refused) {
    json.with("cohortNumbers", VERSION);
    json.with("software", made.software());
    json.with("facts", made.facts());
    json.with("policy", made.policy());
    json.with("rows", Math.toIntExact(summary.rows()));
    json.with("refused", Math.toIntExact(refused));
    json.list(
        "numbers",
        List.copyOf(summary.values().entrySet()),
        (object, entry) -> number(object, entry, summary));
  }

  private static void number(
      JsonObject json, Map.Entry<FindingCode, Distribution> entry, NumberSummary summary) {
    FindingCode code = entry.getKey();
    Distribution of = entry.getValue();
    json.with("code", code.code());
    json.with("unit", code.unit().ucum());
    json.with("values", Math.toIntExact(of.moments().count()));
    if (of.moments().count() > 0) {
      json.with("mean", of.moments().mean());
      json.with("median", of.spectrum().quantile(MIDDLE));
      json.with("quantile2.5", of.spectrum().quantile(TAIL));
      json.with("quantile97.5", of.spectrum().quantile(1 - TAIL));
    }
    if (of.moments().count() > 1) {
      json.with("standardDeviation", of.moments().standardDeviation());
    }
    if (summary.over().containsKey(code)) {
      json.with("aboveLimit", Math.toIntExact(summary.over().getOrDefault(code, 0L)));
    }
    if (summary.chances().containsKey(code) && summary.chances().get(code).count() > 0) {
      json.with("expectedAboveLimit", summary.chances().get(code).mean() * of.moments().count());
    }
  }
}
