package cistern.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.parser.PipeParser;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import cistern.checks.OutsideCheck;
import cistern.exchange.fhir.FhirWriter;
import cistern.exchange.hl7v2.Hl7Writer;
import cistern.exchange.intake.Intake;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A report of 25 results made into a judged work-up, beside the reference library that only parses
 * it, in the processor's time of one thread: what else the machine does must not count.
 */
@Tag("long")
class SpeedStudyTest {

  /** The aim is 1.5; what is more than this has become slower. */
  private static final double MOST = 2.5;

  private static final int ROUNDS = 41;
  private static final int REPORTS = 100;
  private static final Facts FACTS = Facts.standard();
  private static final Intake INTAKE = Intake.of(FACTS, LocalMapping.NONE);
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  /** What is timed. */
  private interface Work {
    void run() throws HL7Exception;
  }

  private static void read(byte[] report) {
    INTAKE.read(
        new ByteArrayInputStream(report),
        reading -> assertThat(reading).isInstanceOf(Understood.class));
  }

  /** The median over rounds of the time of one piece of work over that of another. */
  private static double ratio(Work ours, Work theirs) throws HL7Exception {
    double[] ratios = new double[ROUNDS];
    for (int i = 0; i < 2 * ROUNDS; i++) {
      double one = time(ours);
      ratios[i % ROUNDS] = one / time(theirs);
    }
    Arrays.sort(ratios);
    return ratios[ROUNDS / 2];
  }

  private static double time(Work work) throws HL7Exception {
    long start = THREADS.getCurrentThreadCpuTime();
    for (int i = 0; i < REPORTS; i++) {
      work.run();
    }
    return THREADS.getCurrentThreadCpuTime() - start;
  }

  @Test
  void read_messagesOf25Results_takesLittleMoreThanParsing() throws HL7Exception, IOException {
    String message = SentExports.of25Results(Hl7Writer::write);
    byte[] bytes = message.getBytes(StandardCharsets.UTF_8);
    try (HapiContext context = new DefaultHapiContext()) {
      context.setValidationContext(ValidationContextFactory.noValidation());
      PipeParser parser = context.getPipeParser();
      check(
          "HL7 v2.5.1 message",
          "HAPI 2.6.0 parsing without validation",
          ratio(() -> read(bytes), () -> parser.parse(message)));
    }
  }

  @Test
  void read_bundlesOf25Results_takesLittleMoreThanParsing() throws HL7Exception {
    String bundle = SentExports.of25Results(FhirWriter::write);
    byte[] bytes = bundle.getBytes(StandardCharsets.UTF_8);
    IParser parser = FhirContext.forR4Cached().newJsonParser();
    check(
        "FHIR bundle",
        "HAPI FHIR 8.8.1 parsing, lenient, no validation",
        ratio(() -> read(bytes), () -> parser.parseResource(Bundle.class, bundle)));
  }

  private static void check(String what, String library, double ratio) {
    assertThat(ratio).as(what).isLessThanOrEqualTo(MOST);
    OutsideCheck.of(
            what + " of 25 results to a judged work-up, one thread",
            library,
            "aim at most 1.5 times its time, reported as it is")
        .toTable(String.format(Locale.ROOT, "%.1f times", ratio));
  }
}
