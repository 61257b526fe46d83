package cistern.exchange.intake;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.lab.LocalMapping;
import cistern.panel.Person;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Result messages; invented data, forms by the chapters of HL7 v2.3 to v2.8. */
class Hl7IntakeTest {

  static final String HEAD =
      "MSH|^~\\&|LIS|LAB|||20310302120000+0100||ORU^R01^ORU_R01|M1|T|2.5.1\r"
          + "PID|1||p-7^^^A^PI~mr-7^^^A^MR||Example^Ann||19970302|F\r";
  private static final String CSF =
      "SPM|1|||CSF^Cerebrospinal fluid^HL70487|||||||||||||202103021015\r";

  static String order(String specimen, String... results) {
    StringBuilder text = new StringBuilder("OBR|1||r-1|P^Panel^L|||203103021015+0100\r");
    for (String result : results) {
      text.append("OBX|1|").append(result).append('\r');
    }
    return text + specimen.replace("202103021015", "203103021015+0100");
  }

  static String message(String... results) {
    return HEAD + order(CSF, results);
  }

  @Nested
  class Values {

    @Test
    void read_structuredAndPlainNumbers_keepSignAndUnit() {
      Read read =
          Read.of(
              message(
                  "SN|kappa-flc.csf^k^99CISTERN||<^0.3|mg/L|||||F",
                  "ST|2520-5^Lactate^LN||> 90|mmol/l|||||F",
                  "NM|1746-7^Albumin^LN||22.0|MG/DL|||||F",
                  "ST|measles-igg.csf^Measles^99CISTERN||1:40||||||F",
                  "NM|26465-5^WBC^LN||9|10^6/L|<5|H||||F"));
      assertThat(read.values())
          .containsExactly(
              "kappa-flc.csf <0.3",
              "lactate.csf >90.0",
              "albumin.csf 220.0",
              "measles-igg.csf 40.0",
              "leukocytes.csf 9.0");
      assertThat(read.document()).contains("\"value\": 22.0").contains("\"reportedLimit\": \"<5\"");
    }

    @Test
    void read_equalSignAndSecondValue_areReadAndLeftOut() {
      Read read =
          Read.of(
              message(
                  "ST|2880-3^Protein^LN||=410|mg/L|||||F",
                  "NM|1746-7^Albumin^LN||220~230|mg/L|||||F",
                  "ST|12782-9^OCB^LN||Positive (pattern 2)||||||F"));
      assertThat(read.values()).containsExactly("total-protein.csf 410.0");
      assertThat(read.document()).contains("\"pattern\": 2").contains("value-not-understood");
    }

    @Test
    void read_answerAgainstItsPattern_isLeftOut() {
      // Patterns 2 and 3 are positive, 1, 4 and 5 negative (Andersson 1994).
      Read read =
          Read.of(
              message(
                  "NM|1746-7^Albumin^LN||220|mg/L|||||F",
                  "ST|12782-9^OCB^LN||positive, type 4||||||F"));
      assertThat(read.document()).contains("value-not-understood").doesNotContain("\"pattern\"");
    }

    @Test
    void read_personAndDraws_areThoseOfTheMessage() {
      Read read = Read.of(message("NM|1746-7^Albumin^LN||22|mg/dL|||||F"));
      Person person = read.workup().workup().panel().person();
      assertThat(person.id()).contains("mr-7");
      assertThat(person.ageYears()).hasValue(34);
      assertThat(read.workup().workup().panel().csf().at().orElseThrow())
          .hasToString("2031-03-02T10:15+01:00");
      assertThat(read.workup().workup().remarks().isInvented()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"2.3", "2.4", "2.5", "2.7", "2.8"})
    void read_specimenSourceOfOlderVersions_saysTheFluid(String version) {
      String older =
          HEAD.replace("2.5.1", version)
              + "OBR|1||r-1|P^Panel^L|||203103021015||||||||SER&Serum&HL70070\r"
              + "OBX|1|NM|ALB^Albumin^L||42|g/l|||||F\r";
      LocalMapping mapping = Mappings.of("{\"code\":\"ALB\",\"means\":\"albumin\"}");
      assertThat(Read.of(older.getBytes(StandardCharsets.UTF_8), mapping).values())
          .containsExactly("albumin.serum 42000.0");
    }
  }

  /** What is compared with CSF is so with serum or plasma; what is judged alone is not. */
  @ParameterizedTest
  @CsvSource({
    "|||^Simoa, 'Simoa, plasma'",
    "'', plasma",
    "|||^Simoa of EDTA plasma, Simoa of EDTA plasma"
  })
  void read_plasmaOfAValueJudgedAlone_isKeptBesideItsMethod(String method, String assay) {
    Read read =
        Read.of(
            HEAD
                + order(
                    "SPM|1|||PLAS^Plasma^HL70487\r",
                    "NM|101281-4^NfL^LN||10.5|pg/mL|||||F|||" + method,
                    "NM|1751-7^Albumin^LN||42|g/L|||||F"));

    assertThat(read.values())
        .containsExactly("neurofilament-light.serum 10.5", "albumin.serum 42000.0");
    assertThat(read.document().lines().filter(line -> line.contains("\"assay\"")))
        .singleElement()
        .asString()
        .contains("\"" + assay + "\"");
  }

  @Test
  void read_gradeOfAStructuredNumber_isNoNumber() {
    Read read =
        Read.of(
            message("NM|2880-3^Protein^LN||410|mg/L|||||F", "SN|1746-7^Alb^LN||^2^+|mg/L|||||F"));
    assertThat(read.values()).containsExactly("total-protein.csf 410.0");
    assertThat(read.problems()).containsExactly("value-not-understood");
  }

  @ParameterizedTest
  @CsvSource({
    "220 x 10^3, value-not-understood",
    "220 (100-350), value-not-understood",
    "220 haemolytic, note"
  })
  void read_whatStandsBehindTheNumber_isNeverLost(String value, String why) {
    Read read =
        Read.of(
            message(
                "NM|2880-3^Protein^LN||410|mg/L|||||F", "ST|1746-7^Alb^LN||" + value + "|mg/L"));
    assertThat(read.problems()).containsExactly(why);
    assertThat(read.values()).hasSize(why.equals("note") ? 2 : 1);
  }

  @Test
  void read_freeTextOfASource_saysTheFluid() {
    String older =
        HEAD
            + "OBR|1||r-1|P^Panel^L|||203103021015||||||||^^Liquor cerebrospinalis^^Lumbar\r"
            + "OBX|1|NM|igg^IgG^99CISTERN||30|mg/L|||||F\r";
    assertThat(Read.of(older).values()).containsExactly("igg.csf 30.0");
  }

  @ParameterizedTest
  @ValueSource(strings = {"2031-03-02 10:15", "203103", "10:15"})
  void read_timeThatCannotBeRead_isListedWithItsPlace(String time) {
    String text = message("NM|1746-7^Alb^LN||220|mg/L").replace("203103021015+0100", time);
    Read read = Read.of(text);
    assertThat(read.problems()).containsOnly("time-unclear");
    assertThat(read.document()).contains("OBR-7 (line 3)", "SPM-17 (line 5)", time);
  }

  @Test
  void read_hourWithoutMinutes_isADayAlone() {
    Read read =
        Read.of(message("NM|1746-7^Alb^LN||220|mg/L").replace("203103021015+0100", "2031030210"));
    assertThat(read.problems()).containsExactly("time-unclear");
    assertThat(read.workup().workup().panel().person().ageYears()).hasValue(34);
  }

  @Nested
  class NotUnderstood {

    @Test
    void read_whatIsNotUnderstood_isKeptAndListed() {
      Read read =
          Read.of(
              message(
                  "NM|1746-7^Albumin^LN||22|mg/dL|||||F",
                  "NM|2464-6^IgG^LN||3|||||F",
                  "NM|2880-3^Protein^LN||3|furlong|||||F",
                  "NM|FERR^Ferritin^L||11|ug/L|||||F",
                  "ST|2342-4^Glucose^LN||see note|mg/dL|||||F",
                  "NM|26465-5^WBC^LN||9|/uL|||||X",
                  "NM|14117-6^IgG index^LN||0.7|1|||||F"));
      assertThat(read.values()).containsExactly("albumin.csf 220.0");
      assertThat(read.problems())
          .containsExactlyInAnyOrder(
              "unit-missing",
              "unit-not-understood",
              "unknown-code",
              "value-not-understood",
              "cancelled",
              "computed-here");
      assertThat(read.document()).contains("\"what\": \"FERR Ferritin\"");
    }

    @Test
    void read_fluidOfNeitherSpecimenNorCode_isNeverGuessed() {
      String text =
          HEAD + order("", "NM|ALB^Albumin^L||42|g/L|||||F", "NM|1746-7^A^LN||22|mg/dL|||||F");
      LocalMapping mapping = Mappings.of("{\"code\":\"ALB\",\"means\":\"albumin\"}");
      Read read = Read.of(text.getBytes(StandardCharsets.UTF_8), mapping);
      assertThat(read.values()).containsExactly("albumin.csf 220.0");
      assertThat(read.problems()).containsExactly("specimen-unclear");
    }

    /** Public lists have the serum's code on CSF glucose: the specimen decides, and it is said. */
    @Test
    void read_specimenAgainstCode_followsTheSpecimenAndSaysSo() {
      Read read = Read.of(message("NM|2345-7^Glucose^LN||60|mg/dL|||||F"));
      assertThat(read.values().getFirst()).startsWith("glucose.csf 3.33");
      assertThat(read.problems()).containsExactly("specimen-against-code");
    }

    @Test
    void read_urine_isNeverSerum() {
      String text = HEAD + order("SPM|1|||UR^Urine\r", "NM|1751-7^Albumin^LN||42|g/L|||||F");
      assertThat(Read.of(text).refusals()).singleElement().asString().startsWith("nothing-underst");
    }
  }

  @Nested
  class Several {

    @Test
    void read_amendedResult_replacesTheFirst() {
      Read read =
          Read.of(
              message(
                  "NM|1746-7^Albumin^LN||22|mg/dL|||||F", "NM|1746-7^Albumin^LN||24|mg/dL|||||C"));
      assertThat(read.values()).containsExactly("albumin.csf 240.0");
      assertThat(read.problems()).containsExactly("replaced");
    }

    @Test
    void read_twoFinalValuesThatDiffer_refusedWithBothPlaces() {
      Read read =
          Read.of(
              message(
                  "NM|1746-7^Albumin^LN||22|mg/dL|||||F", "NM|1746-7^Albumin^LN||24|mg/dL|||||F"));
      assertThat(read.refusals())
          .singleElement()
          .asString()
          .startsWith("result-twice at OBX-5 (line 5)");
    }

    @Test
    void read_batchOfTwoPersons_givesTwoWorkups() {
      String one = message("NM|1746-7^Albumin^LN||22|mg/dL|||||F");
      String two = one.replace("mr-7", "mr-8").replace("r-1", "r-2");
      Read read = Read.of("FHS|^~\\&|L\rBHS|^~\\&|L\r" + one + two + "BTS|2\rFTS|1\r");
      assertThat(read.count()).isEqualTo(2);
      assertThat(read.workup(1).workup().panel().person().id()).contains("mr-8");
    }

    @Test
    void read_fluidsInMessagesOfTheirOwn_meetInOneWorkup() {
      String csf = message("NM|1746-7^Albumin^LN||22|mg/dL|||||F");
      String serum = HEAD + order("", "NM|1751-7^Albumin^LN||42|g/L|||||F");
      Read read = Read.of(csf + serum);
      assertThat(read.count()).isEqualTo(1);
      assertThat(read.values()).containsExactly("albumin.csf 220.0", "albumin.serum 42000.0");
    }

    @Test
    void read_twoPuncturesInOneReport_areTwoWorkups() {
      String first = order(CSF, "NM|1746-7^Albumin^LN||22|mg/dL|||||F");
      String second = first.replace("20310302", "20310609").replace("||22|", "||30|");
      Read read = Read.of(HEAD + first + second);
      assertThat(read.count()).isEqualTo(2);
      assertThat(read.workup(0).workup().id()).isEqualTo("r-1-1");
      assertThat(Read.values(read.workup(1))).containsExactly("albumin.csf 300.0");
    }
  }

  @Nested
  class Hostile {

    @Test
    void read_twoPersonsInOneMessage_refusedWithBothPlaces() {
      String text =
          message("NM|1746-7^Albumin^LN||22|mg/dL|||||F")
              + "PID|2||mr-9^^^A^MR||Other\r"
              + order(CSF, "NM|2464-6^IgG^LN||3|mg/dL|||||F");
      assertThat(Read.of(text).refusals())
          .singleElement()
          .asString()
          .isEqualTo(
              "two-persons at PID (line 6): This names another person than PID (line 2) does: a"
                  + " report that mixes two persons is not read.");
    }

    /** One number of two hospitals, or of two persons by their days of birth or names. */
    @ParameterizedTest
    @CsvSource({
      "^^^A^MR, ^^^B^MR",
      "19970302, 19700302",
      "Example^Ann||19970302, Sample^Bea||",
    })
    void read_oneIdentifierOfTwoPersons_isNeverOnePair(String said, String other) {
      String csf = message("NM|1746-7^Albumin^LN||22|mg/dL|||||F");
      String serum = HEAD + order("", "NM|1751-7^Albumin^LN||42|g/L|||||F");
      Read read = Read.of(csf + serum.replace(said, other));
      assertThat(read.count()).isEqualTo(2);
      assertThat(Read.values(read.workup(0))).containsExactly("albumin.csf 220.0");
      assertThat(Read.values(read.workup(1))).containsExactly("albumin.serum 42000.0");
      String both = csf + HEAD.lines().skip(1).findFirst().orElseThrow().replace(said, other);
      assertThat(Read.of(both + "\r").refusals())
          .singleElement()
          .asString()
          .startsWith("two-persons at PID (line 6)");
    }

    @Test
    void read_delimitersInAName_areUnescaped() {
      String text =
          message("NM|1746-7^Albumin^LN||22|mg/dL|||||F")
              .replace("Example^Ann", "O\\S\\Ex\\F\\ample\\T\\Co^A\\R\\nn\\E\\");
      assertThat(Read.of(text).document()).contains("O^Ex|ample&Co, A~nn\\\\");
    }

    @Test
    void read_declaredUtf8ThatIsNot_refused() {
      byte[] latin =
          message("NM|26454-9^RBC^LN||3|/µL|||||F")
              .replace("|2.5.1", "|2.5.1||||||UNICODE UTF-8")
              .getBytes(StandardCharsets.ISO_8859_1);
      assertThat(Read.of(latin, LocalMapping.NONE).refusals())
          .singleElement()
          .asString()
          .startsWith("charset at MSH-18 (line 1)");
    }

    @Test
    void read_undeclaredWindowsText_isReadAndSaid() {
      byte[] bytes =
          message("NM|26454-9^RBC^LN||3|/µL|||||F").getBytes(Charset.forName("windows-1252"));
      Read read = Read.of(bytes, LocalMapping.NONE);
      assertThat(read.values()).containsExactly("erythrocytes.csf 3.0");
      assertThat(read.problems()).containsExactly("encoding-assumed");
    }

    @ParameterizedTest
    @ValueSource(
        strings = {
          "MSH",
          "MSH|",
          "MSH|^^^^|x",
          "MSH|^~\\&|x|||||||",
          "MSHABCDE|\r",
          "MSH|^~\\&\rPID"
        })
    void read_brokenHeader_refused(String text) {
      assertThat(Read.of(text).refusals()).isNotEmpty();
    }

    @Test
    void read_lineOfTwentyMegabytes_refusedForItsSize() {
      byte[] bytes =
          message("ST|X^Y^L||" + "9".repeat(20_000_000)).getBytes(StandardCharsets.UTF_8);
      assertThat(Read.of(bytes, LocalMapping.NONE).refusals())
          .singleElement()
          .asString()
          .startsWith("file-too-large");
    }

    @Test
    void read_framedMessage_isReadWithoutItsFrame() {
      Read read = Read.of("\u000b" + message("NM|1746-7^A^LN||22|mg/dL|||||F") + "\u001c\r");
      assertThat(read.values()).isEqualTo(List.of("albumin.csf 220.0"));
    }
  }
}
