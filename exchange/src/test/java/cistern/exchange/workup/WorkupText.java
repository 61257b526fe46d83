package cistern.exchange.workup;

import cistern.exchange.json.InputProblem;
import cistern.fact.Facts;
import cistern.interpretation.Workup;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Work-ups as text, for the tests of their reader. */
final class WorkupText {

  /** An invented work-up that uses every field there is. */
  static final String FULL =
      """
      {
        "workup": 1, "id": "example-1", "invented": true,
        "question": "bands?", "note": "none", "clinician": "Dr Moss", "laboratory": "Lab North",
        "person": { "id": "p-7", "ageYears": 34.5, "sex": "female" },
        "draws": {
          "csf": { "at": "2031-03-02T10:15:00Z", "receivedAt": "2031-03-02T10:40:00Z",
                   "appearance": "clear", "site": "lumbar", "volumeMl": 12, "portionMl": [0, 4],
                   "openingPressure": { "value": 17, "unit": "cm[H2O]" } },
          "serum": { "at": "2031-03-02T11:00:00Z" }
        },
        "results": [
          { "analyte": "albumin", "in": "csf", "value": 220, "unit": "mg/L", "cv": 0.05,
            "assay": "nephelometry", "at": "2031-03-02T12:00:00Z", "status": "final",
            "reportedLimit": "< 350", "originalCode": "ALB-L", "originalText": "220" },
          { "analyte": "albumin", "in": "serum", "value": 42, "unit": "g/L" },
          { "analyte": "igg", "in": "csf", "value": 6.2, "unit": "mg/dL" },
          { "analyte": "igg", "in": "serum", "value": 11, "unit": "g/L" },
          { "analyte": "kappa-flc", "in": "csf", "below": 0.3, "unit": "mg/L" },
          { "analyte": "measles-igg", "in": "csf", "value": 3.1, "unit": "m[IU]/mL" },
          { "analyte": "measles-igg", "in": "serum", "above": 2, "unit": "[IU]/mL" },
          { "analyte": "leukocytes", "in": "csf", "value": 5, "unit": "10*6/L" }
        ],
        "bands": { "csfOnly": 6, "shared": 0, "serumOnly": 0, "method": "IEF",
                   "readBy": "laboratory" },
        "serology": [],
        "context": { "immunoglobulinInfusion": "unknown", "plasmaExchange": "no",
                     "corticosteroids": { "answer": "yes", "at": "2031-03-01T08:00:00Z" } },
        "evidence": { }, "procedure": { }, "finalDiagnosis": "unknown"
      }
      """;

  private static final WorkupFile FILE = WorkupFile.of(Facts.standard());

  private WorkupText() {}

  /** A work-up with some results. */
  static String withResults(String results) {
    return "{\"workup\":1,\"id\":\"a\",\"results\":[" + results + "]}";
  }

  /** A work-up with bands. */
  static String withBands(String bands) {
    return "{\"workup\":1,\"id\":\"a\",\"bands\":" + bands + "}";
  }

  static WorkupReading read(String text) {
    return read(text.getBytes(StandardCharsets.UTF_8));
  }

  static WorkupReading read(byte[] bytes) {
    return FILE.read(new ByteArrayInputStream(bytes));
  }

  static Workup understood(String text) {
    return switch (read(text)) {
      case WorkupReading.Understood understood -> understood.workup();
      case WorkupReading.NotValid notValid -> throw new AssertionError(notValid.problems());
    };
  }

  static List<InputProblem> refused(String text) {
    return switch (read(text)) {
      case WorkupReading.Understood understood -> List.of();
      case WorkupReading.NotValid notValid -> notValid.problems();
    };
  }
}
