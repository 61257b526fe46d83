package cistern.conformance;

import cistern.exchange.fhir.FhirWriter;
import cistern.exchange.hl7v2.Hl7Writer;
import cistern.exchange.intake.Intake;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.SentReport;
import cistern.exchange.lab.SentReport.Versions;
import cistern.exchange.lab.SentWorkup;
import cistern.exchange.workup.WorkupReading;
import cistern.exchange.workup.WorkupReading.NotValid;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Any bytes for the readers: they become work-ups, which can go out again, or a reason why not.
 * Public, as the fuzzer asks.
 */
public final class AnyInput {

  private static final Facts FACTS = Facts.standard();
  private static final Intake INTAKE = Intake.of(FACTS, LocalMapping.NONE);

  /** How often the first input is read until it is compiled. */
  private static final int WARM = 100;

  private static final byte[] TABLE =
      "person.id,albumin.csf,albumin.serum\np-1,220,42000\n".getBytes(StandardCharsets.UTF_8);

  private AnyInput() {}

  /**
   * Loads what every input needs before the fuzzer's clock runs: instrumenting the classes takes
   * longer than thousands of inputs.
   */
  public static void fuzzerInitialize() {
    for (int i = 0; i < WARM; i++) {
      fuzzerTestOneInput(TABLE);
    }
  }

  /** Reads one input; a fault is an exception or an error. */
  public static void fuzzerTestOneInput(byte[] input) {
    List<WorkupReading> readings = new ArrayList<>();
    INTAKE.read(new ByteArrayInputStream(input), readings::add);
    if (readings.isEmpty()) {
      throw new AssertionError("neither a work-up nor a reason");
    }
    readings.forEach(AnyInput::check);
  }

  private static void check(WorkupReading reading) {
    switch (reading) {
      case Understood understood -> {
        SentReport report = report(understood);
        if (FhirWriter.write(report).isEmpty() || Hl7Writer.write(report).isEmpty()) {
          throw new AssertionError("a work-up that does not go out");
        }
      }
      case NotValid notValid -> {
        if (notValid.problems().isEmpty()) {
          throw new AssertionError("refused without a reason");
        }
      }
    }
  }

  private static SentReport report(Understood understood) {
    return new SentReport(
        new SentWorkup(understood.document(), FACTS),
        List.of(),
        List.of(),
        List.of(),
        new Versions("test", FACTS.version()),
        Optional.empty());
  }
}
