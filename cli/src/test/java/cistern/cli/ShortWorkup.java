package cistern.cli;

import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A work-up in one line: {@code leukocytes=12 glucose.serum=5 leukocytes.blood=9000} and more
 * members as JSON.
 */
final class ShortWorkup {

  private static final Facts FACTS = Facts.standard();
  private static final WorkupFile FILE = WorkupFile.of(FACTS);
  private static final Interpreter INTERPRETER = Interpreter.of(FACTS);

  private static final Map<String, String> UNITS =
      Map.of(
          "glucose", "mmol/L",
          "lactate", "mmol/L",
          "leukocytes", "/uL",
          "erythrocytes", "/uL",
          "neutrophils", "1",
          "lymphocytes", "1",
          "monocytes", "1",
          "eosinophils", "1");

  private ShortWorkup() {}

  static Interpretation interpret(String results, String members) {
    String json =
        "{\"workup\":2,\"id\":\"short\",\"results\":["
            + Arrays.stream(results.strip().split(" +"))
                .filter(r -> !r.isBlank())
                .map(ShortWorkup::result)
                .collect(Collectors.joining(","))
            + "]"
            + (members.isBlank() ? "" : "," + members)
            + "}";
    WorkupReading reading =
        FILE.read(new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)));
    return switch (reading) {
      case WorkupReading.Understood understood -> INTERPRETER.interpret(understood.workup());
      case WorkupReading.NotValid notValid -> throw new AssertionError(notValid.problems());
    };
  }

  private static String result(String text) {
    String[] parts = text.split("=", -1);
    String in = parts[0].contains(".") ? parts[0].substring(parts[0].indexOf('.') + 1) : "csf";
    String analyte = parts[0].replace("." + in, "");
    return "{\"analyte\":\"%s\",\"in\":\"%s\",\"value\":%s,\"unit\":\"%s\"}"
        .formatted(analyte, in, parts[1], UNITS.getOrDefault(analyte, "mg/L"));
  }
}
