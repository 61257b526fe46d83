package cistern.exchange.intake;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.fhir.FhirWriter;
import cistern.exchange.hl7v2.Hl7Writer;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.lab.SentReport;
import cistern.exchange.lab.SentReport.Versions;
import cistern.exchange.lab.SentWorkup;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * FHIR, then a message, then a work-up, then FHIR again: every digit, unit, limit, status, sign,
 * fluid and offset is the one that the work-up began with; invented data.
 */
class RoundTripTest {

  private static final Facts FACTS = Facts.standard();

  private static String sent(Understood read, Function<SentReport, String> writer) {
    return writer.apply(
        new SentReport(
            new SentWorkup(read.document(), FACTS),
            List.of(),
            List.of(),
            List.of(),
            new Versions("test", FACTS.version()),
            Optional.empty()));
  }

  /** What a work-up is after it went out and in through every carrier. */
  private static Read around(String workup) {
    Read first = Read.of(workup);
    assertThat(first.refusals()).isEmpty();
    Read fhir = Read.of(sent(first.workup(), FhirWriter::write));
    assertThat(fhir.refusals()).isEmpty();
    Read message = Read.of(sent(fhir.workup(), Hl7Writer::write));
    assertThat(message.refusals()).isEmpty();
    Read again = Read.of(sent(message.workup(), FhirWriter::write));
    assertThat(again.refusals()).isEmpty();
    return again;
  }

  private static String part(Read read, String name) {
    Json part = read.workup().document().members().get(name);
    return part == null
        ? ""
        : JsonText.of(part)
            .replaceAll("\\s*\"original(Code|Text)\": \"[^\"]*\",?", "")
            .replaceAll(",(\\s*})", "$1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"analyte\":\"albumin\",\"in\":\"csf\",\"value\":22.00,\"unit\":\"mg/dL\"",
        "\"analyte\":\"albumin\",\"in\":\"serum\",\"value\":0.000,\"unit\":\"g/L\"",
        "\"analyte\":\"albumin\",\"in\":\"serum\",\"value\":123456.7890,\"unit\":\"umol/L\"",
        "\"analyte\":\"igg\",\"in\":\"csf\",\"below\":0.30,\"unit\":\"mg/L\"",
        "\"analyte\":\"igm\",\"in\":\"csf\",\"below\":0.000100,\"unit\":\"g/L\"",
        "\"analyte\":\"lactate\",\"in\":\"csf\",\"above\":20.0,\"unit\":\"mmol/L\"",
        "\"analyte\":\"glucose\",\"in\":\"serum\",\"value\":5,\"unit\":\"mmol/L\"",
        "\"analyte\":\"leukocytes\",\"in\":\"csf\",\"value\":9,\"unit\":\"{cells}/uL\"",
        "\"analyte\":\"leukocytes\",\"in\":\"csf\",\"value\":9.0,\"unit\":\"10*6/L\"",
        "\"analyte\":\"erythrocytes\",\"in\":\"blood\",\"value\":4.70,\"unit\":\"10*12/L\"",
        "\"analyte\":\"hematocrit\",\"in\":\"blood\",\"value\":0.410,\"unit\":\"1\"",
        "\"analyte\":\"neutrophils\",\"in\":\"csf\",\"value\":35,\"unit\":\"%\"",
        "\"analyte\":\"measles-igg\",\"in\":\"csf\",\"value\":1.250,\"unit\":\"m[IU]/mL\"",
        "\"analyte\":\"borrelia-igg\",\"in\":\"serum\",\"above\":200,\"unit\":\"[arb'U]/mL\"",
        "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\",\"status\":\"preliminary\"",
        "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\",\"status\":\"amended\"",
        "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\",\"reportedLimit\":\"<5\"",
        "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\","
            + "\"reportedLimit\":\"1|0^0 - 3&5~0 \\\\F\\\\\"",
        "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\","
            + "\"assay\":\"N|eph^elo&metry \\\\.br\\\\ ü\"",
        "\"analyte\":\"igg\",\"in\":\"serum\",\"value\":3,\"unit\":\"g/L\","
            + "\"at\":\"2031-03-02T12:00:30-03:30\"",
      })
  void around_oneResult_isTheSame(String result) {
    String workup = "{\"id\":\"a\",\"person\":{\"id\":\"p\"},\"results\":[{" + result + "}]}";
    assertThat(part(around(workup), "results")).isEqualTo(part(Read.of(workup), "results"));
  }

  /** A number of HL7 has no power of ten; the digits come back, however they are written. */
  @ParameterizedTest
  @ValueSource(strings = {"4.6e-3", "1.20E2", "1.2E2", "5e3", "0.00e1", "12e-1", "30e+0"})
  void around_powerOfTen_keepsItsDigits(String literal) {
    for (String kind : List.of("value", "below", "above")) {
      if (kind.equals("value") || !literal.startsWith("0.00")) {
        String result =
            "\"analyte\":\"igg\",\"in\":\"csf\",\"%s\":%s,\"unit\":\"mg/L\""
                .formatted(kind, literal);
        String workup = "{\"id\":\"a\",\"person\":{\"id\":\"p\"},\"results\":[{" + result + "}]}";
        assertThat(exact(part(around(workup), "results")))
            .isEqualTo(exact(part(Read.of(workup), "results")));
      }
    }
  }

  /** Numbers by their digits and the power of ten of the last one. */
  private static String exact(String json) {
    return Pattern.compile("(?<=(value|below|above)\": )[-+.\\deE]+")
        .matcher(json)
        .replaceAll(
            number -> {
              BigDecimal exact = new BigDecimal(number.group());
              return exact.unscaledValue() + " 10^" + -exact.scale();
            });
  }

  @Test
  void around_fiftyRandomWorkups_loseNothing() {
    Random random = new Random(20310302);
    for (int i = 0; i < 50; i++) {
      String workup = RandomWorkup.of(random);
      Read again = around(workup);
      Read first = Read.of(workup);
      assertThat(exact(part(again, "results"))).as(workup).isEqualTo(exact(part(first, "results")));
      assertThat(part(again, "draws")).as(workup).isEqualTo(part(first, "draws"));
      assertThat(again.values()).as(workup).isEqualTo(first.values());
    }
  }

  @Test
  void around_cellsOfTwoTubes_areTwoResults() {
    String workup =
        "{\"id\":\"a\",\"person\":{\"id\":\"p\"},\"results\":["
            + "{\"analyte\":\"leukocytes\",\"in\":\"csf\",\"value\":9,\"unit\":\"/uL\",\"tube\":\"last\"},"
            + "{\"analyte\":\"leukocytes\",\"in\":\"csf\",\"value\":90,\"unit\":\"/uL\",\"tube\":\"first\"}]}";
    Read again = around(workup);
    assertThat(part(again, "results")).isEqualTo(part(Read.of(workup), "results"));
    assertThat(again.values()).isEqualTo(Read.of(workup).values());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2031-03-02T10:15:00+01:00",
        "2031-03-02T23:59:59+05:45",
        "2031-03-02T00:00:00-03:30",
        "2031-10-26T02:30:00+02:00",
        "2031-10-26T02:30:00+01:00",
        "2031-03-02T10:15:00Z",
        "2032-02-29T10:15:00+14:00"
      })
  void around_timesOfBothDraws_keepTheirOffset(String at) {
    String workup =
        ("{\"id\":\"a\",\"person\":{\"id\":\"p\"},\"draws\":{\"csf\":{\"at\":\"%s\",\"receivedAt\":\"%s\"},"
                + "\"serum\":{\"at\":\"%s\"}},\"results\":["
                + "{\"analyte\":\"albumin\",\"in\":\"csf\",\"value\":1,\"unit\":\"g/L\"},"
                + "{\"analyte\":\"albumin\",\"in\":\"serum\",\"value\":1,\"unit\":\"g/L\"}]}")
            .formatted(at, at, at);
    assertThat(part(around(workup), "draws")).isEqualTo(part(Read.of(workup), "draws"));
  }
}
