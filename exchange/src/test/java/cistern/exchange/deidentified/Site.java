package cistern.exchange.deidentified;

import cistern.exchange.intake.Intake;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonDocument;
import cistern.exchange.json.JsonText;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.workup.WorkupReading;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A site with a secret of its own, and what it makes of inputs. */
final class Site {

  static final Facts FACTS = Facts.standard();
  private static final Intake INTAKE = Intake.of(FACTS, LocalMapping.NONE);
  static final String FIRST = "one-of-two-invented-secrets-4711";

  private final Deidentification deidentification;

  Site(String secret) {
    deidentification = Deidentification.of(secret(secret), FACTS);
  }

  private static SiteSecret secret(String text) {
    try {
      Path file = Files.createTempFile("site", ".secret");
      Files.writeString(file, text + "\n");
      SiteSecret secret = SiteSecret.read(file, FACTS, new InputProblems()).orElseThrow();
      Files.delete(file);
      return secret;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Every work-up that is understood of an input. */
  static List<Understood> understood(String input) {
    List<WorkupReading> readings = new ArrayList<>();
    byte[] bytes = input.getBytes(StandardCharsets.UTF_8);
    INTAKE.read(new ByteArrayInputStream(bytes), readings::add);
    return readings.stream()
        .filter(Understood.class::isInstance)
        .map(Understood.class::cast)
        .toList();
  }

  /** A JSON text as a tree. */
  static Json.Structure tree(String json) {
    return JsonDocument.read(
            new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)),
            InputLimits.of(FACTS),
            new InputProblems())
        .orElseThrow();
  }

  Deidentified safe(Json.Structure document) {
    return deidentification.of(document);
  }

  /** The safe form of the only work-up of an input. */
  Deidentified safe(String workup) {
    return safe(understood(workup).getFirst().document());
  }

  /** The same as text. */
  String text(String workup) {
    return JsonText.of(safe(workup).document());
  }
}
