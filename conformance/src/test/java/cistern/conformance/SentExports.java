package cistern.conformance;

import cistern.exchange.intake.Intake;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.SentFinding;
import cistern.exchange.lab.SentReport;
import cistern.exchange.lab.SentReport.Versions;
import cistern.exchange.lab.SentWorkup;
import cistern.exchange.workup.WorkupReading;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.statement.Statement;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** What goes out, by a name: of examples, and of work-ups with what is easily lost. */
final class SentExports {

  private static final Facts FACTS = Facts.standard();
  private static final Interpreter INTERPRETER = Interpreter.of(FACTS);

  /**
   * Times in every form that a work-up allows, a name with signs, a blank, a birth that is none.
   */
  private static final String AWKWARD =
      """
      { "id": "awkward-with-an-id-of-more-than-twenty-signs", "laboratory": "L & M <x>",
        "person": { "id": "p|7", "name": "Ex^am|ple, A&n~n", "birthDate": "spring", "sex": "other" },
        "draws": { "csf": { "at": "20310302T1015+0100", "receivedAt": "2031-03-02T10:40Z" },
                   "serum": { "at": "2031-03-02t11:00:00.250z" } },
        "results": [
          { "analyte": "albumin", "in": "csf", "value": 22.00, "unit": "mg/dL", "status": "amended",
            "reportedLimit": " ", "assay": "" },
          { "analyte": "kappa-flc", "in": "csf", "below": 3.0e-1, "unit": "mg/L" },
          { "analyte": "leukocytes", "in": "csf", "above": 1e3, "unit": "10*6/L", "status": "odd" },
          { "analyte": "neutrophils", "in": "csf", "value": 0, "unit": "%" },
          { "analyte": "Example", "in": "csf", "value": 1, "unit": "?" },
          { "analyte": "hematocrit", "in": "blood", "value": 0.41, "unit": "1" } ],
        "bands": { "pattern": 2, "result": "positive" } }
      """;

  private static final List<String> SAMPLES =
      List.of(
          "albumin.csf mg/L",
          "albumin.serum g/L",
          "igg.csf mg/L",
          "igg.serum g/L",
          "iga.csf mg/L",
          "iga.serum g/L",
          "igm.csf mg/L",
          "igm.serum g/L",
          "kappa-flc.csf mg/L",
          "kappa-flc.serum mg/L",
          "lambda-flc.csf mg/L",
          "lambda-flc.serum mg/L",
          "total-protein.csf g/L",
          "glucose.csf mmol/L",
          "glucose.serum mmol/L",
          "lactate.csf mmol/L",
          "leukocytes.csf /uL",
          "erythrocytes.csf /uL",
          "lymphocytes.csf %",
          "monocytes.csf %",
          "neutrophils.csf %",
          "hematocrit.blood 1",
          "measles-igg.csf m[IU]/mL",
          "measles-igg.serum m[IU]/mL",
          "myelin-basic-protein.csf ng/mL");

  private SentExports() {}

  /** An export of one work-up of 25 results. */
  static String of25Results(Function<SentReport, String> writer) {
    StringBuilder results = new StringBuilder();
    for (String sample : SAMPLES) {
      String[] parts = sample.split("[. ]", 3);
      results.append(results.isEmpty() ? "" : ",");
      results.append(
          "{\"analyte\":\"%s\",\"in\":\"%s\",\"value\":0.5%d,\"unit\":\"%s\"}"
              .formatted(parts[0], parts[1], results.length(), parts[2]));
    }
    Map<String, String> exports = new LinkedHashMap<>();
    String workup =
        "{\"id\":\"of-25\",\"invented\":true,\"person\":{\"id\":\"p\",\"ageYears\":34},\"draws\":"
            + "{\"csf\":{\"at\":\"2031-03-02T10:15:00Z\"},\"serum\":{\"at\":\"2031-03-02T11:00:00Z\"}},"
            + "\"results\":["
            + results
            + "]}";
    add(exports, "one", workup, writer);
    return Objects.requireNonNull(exports.get("one"));
  }

  /** An export of every example as well. */
  static Map<String, String> all(Function<SentReport, String> writer) throws IOException {
    Map<String, String> exports = new LinkedHashMap<>(few(writer));
    for (Path file : examples()) {
      String name = String.valueOf(file.getFileName());
      add(exports, name, Files.readString(file), writer);
    }
    return exports;
  }

  /** Exports with what is easily wrong in them, by their names. */
  static Map<String, String> few(Function<SentReport, String> writer) {
    Map<String, String> exports = new LinkedHashMap<>();
    add(exports, "awkward", AWKWARD, writer);
    add(exports, "unnamed", AWKWARD.replaceFirst("(?s)\"person\".*?\\},", ""), writer);
    add(exports, "undated", AWKWARD.replaceFirst("(?s)\"draws\".*?\\} \\},", ""), writer);
    add(exports, "born", AWKWARD.replace("spring", "1997-03").replace("\"p|7\"", "\" \""), writer);
    add(exports, "safe", AWKWARD.replaceFirst("\\{", "{ \"deidentified\": true,"), writer);
    return exports;
  }

  private static List<Path> examples() throws IOException {
    Path folder = Path.of(System.getProperty("cistern.root", "..")).resolve("examples");
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".json")).sorted().toList();
    }
  }

  private static void add(
      Map<String, String> exports,
      String name,
      String workup,
      Function<SentReport, String> writer) {
    List<WorkupReading> readings = new ArrayList<>();
    byte[] bytes = workup.getBytes(StandardCharsets.UTF_8);
    Intake.of(FACTS, LocalMapping.NONE).read(new ByteArrayInputStream(bytes), readings::add);
    for (WorkupReading reading : readings) {
      if (!(reading instanceof Understood understood)) {
        throw new IllegalStateException(name + " is not valid: " + reading);
      }
      exports.put(name, writer.apply(results(understood)));
      exports.put(name + " interpreted", writer.apply(report(understood)));
    }
  }

  private static SentReport results(Understood workup) {
    return new SentReport(
        new SentWorkup(workup.document(), FACTS),
        List.of(),
        List.of(),
        List.of(),
        new Versions("Cistern 0.1.0-SNAPSHOT", FACTS.version()),
        Optional.empty());
  }

  private static SentReport report(Understood workup) {
    Interpretation said = INTERPRETER.interpret(workup.workup());
    return new SentReport(
        new SentWorkup(workup.document(), FACTS),
        said.findings().all().stream()
            .filter(Finding::isAsked)
            .map(finding -> SentFinding.of(finding, FACTS))
            .toList(),
        said.statements().stream().map(Statement::text).toList(),
        said.alerts().urgent().holding().stream().map(u -> u.words().say()).toList(),
        new Versions("Cistern 0.1.0-SNAPSHOT", FACTS.version()),
        Optional.of("%PDF-1.7 invented".getBytes(StandardCharsets.UTF_8)));
  }
}
