package cistern.exchange.intake;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.lab.LocalMapping;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables and printed reports; invented data, layouts by common practice. */
class TableIntakeTest {

  private static final String[] PANEL = {
    "albumin.csf 220.0", "albumin.serum 42000.0", "igg.csf 62.0", "igg.serum 11000.0"
  };

  @Nested
  class Layouts {

    @Test
    void read_ownHeadings_needNoMapping() {
      Read read =
          Read.of(
              """
              id,person.id,ageYears,sex,csf.at,albumin.csf,albumin.serum,kappa-flc.csf
              w-1,p-1,34,female,2031-03-02T10:15:00Z,220,42000,<0.3
              w-2,p-2,40,male,,300,40000,2.0
              """);
      assertThat(read.count()).isEqualTo(2);
      assertThat(Read.values(read.workup(0)))
          .containsExactlyInAnyOrder(
              "albumin.csf 220.0", "albumin.serum 42000.0", "kappa-flc.csf <0.3");
      assertThat(read.workup(1).workup().id()).isEqualTo("w-2");
      assertThat(read.problems()).isEmpty();
    }

    @Test
    void read_oneRowAPerson_takesFluidAndUnitFromTheHeading() {
      Read read =
          Read.of(
              """
              Patient ID;Age;Albumin CSF (mg/dl);Serum albumin [g/L];CSF IgG, mg/L;IgG (serum) g/l
              p-1;34;22,0;42;62;11,0
              """);
      assertThat(read.values()).containsExactlyInAnyOrder(PANEL);
      assertThat(read.problems()).containsExactly("headings-not-confirmed");
      assertThat(read.workup().workup().panel().person().ageYears()).hasValue(34);
    }

    @Test
    void read_oneRowAResult_groupsByPerson() {
      Read read =
          Read.of(
              """
              patient\ttest\tspecimen\tresult\tunit\tcollected
              p-1\tAlbumin\tCSF\t220\tmg/L\t2031-03-02T10:15:00+01:00
              p-1\tAlbumin\tSerum\t42\tg/L\t2031-03-02T10:30:00+01:00
              p-2\tAlbumin\tLiquor\t300\tmg/L\t2031-03-03T10:15:00+01:00
              p-1\tFerritin\tCSF\t11\tug/L\t2031-03-02T10:15:00+01:00
              p-1\tIgG\tCSF\t62\tmg/L\t2031-03-02T10:15:00+01:00
              p-1\tIgG\tSerum\t11\tg/L\t2031-03-02T10:30:00+01:00
              """);
      assertThat(read.count()).isEqualTo(2);
      assertThat(Read.values(read.workup(0))).containsExactlyInAnyOrder(PANEL);
      assertThat(read.workup(0).workup().panel().csf().at()).isPresent();
    }

    @Test
    void read_fluidsAsColumnsWithTwoUnits_takesEachForItsColumn() {
      Read read =
          Read.of(
              """
              Patient ID: p-1
              Age: 34

              Analyte,CSF,Serum,Unit
              Albumin,220,42,mg/L / g/L
              IgG,62,11,mg/L / g/L
              OCB,positive,,
              """);
      assertThat(read.values()).containsExactlyInAnyOrder(PANEL);
      assertThat(read.document()).contains("\"result\": \"positive\"").contains("\"id\": \"p-1\"");
    }

    @Test
    void read_fluidsAsRows_takesTheFluidOfTheRow() {
      Read read =
          Read.of("id;material;Albumin (mg/L);IgG (mg/L)\np-1;CSF;220;62\np-1;Serum;42000;11000\n");
      assertThat(read.count()).isEqualTo(1);
      assertThat(read.values()).containsExactlyInAnyOrder(PANEL);
    }

    @Test
    void read_headingsThatSpanColumns_areReadTogether() {
      Read read =
          Read.of(
              "Laboratory Example,,,,\n,CSF,,Serum,\nPatient,Albumin (mg/L),IgG (mg/L),Albumin"
                  + " (g/L),IgG (g/L)\np-1,220,62,42,11\n");
      assertThat(read.values()).containsExactlyInAnyOrder(PANEL);
      assertThat(read.workup().workup().panel().person().id()).contains("p-1");
    }

    @Test
    void read_printedReport_isReadLineByLine() {
      Read read =
          Read.of(
              """
              Institute of Examples
              Patient ID: p-1
              Cerebrospinal fluid
              Albumin 220 mg/L (110 - 350)
              IgG 62 mg/L
              Leukocytes: 9 cells/uL  H  < 5
              OCB positive
              Serum
              Albumin 42 g/L 35-52
              IgG 11,0 g/L
              """);
      assertThat(read.values()).contains(PANEL).contains("leukocytes.csf 9.0");
      assertThat(read.document()).contains("\"result\": \"positive\"");
    }
  }

  @Nested
  class Numbers {

    @Test
    void read_numberThatMayBeTwo_isListedUnlessTold() {
      String table = "id,Albumin CSF (mg/L)\np-1,\"1,250\"\n";
      assertThat(Read.of(table).refusals()).singleElement().asString().contains("comma");
      LocalMapping told =
          Mappings.columns("\"decimal\":\"comma\",", "{\"heading\":\"id\",\"means\":\"id\"}");
      assertThat(Read.of(table.getBytes(StandardCharsets.UTF_8), told).values())
          .containsExactly("albumin.csf 1.25");
    }

    @Test
    void read_dayFirstDate_onlyWhenTold() {
      String table = "id;CSF date;Albumin CSF (mg/L)\np-1;02.03.2031 10:15;220\n";
      Read untold = Read.of(table);
      assertThat(untold.problems()).contains("date-unclear");
      LocalMapping told =
          Mappings.columns(
              "\"dates\":\"day-first\",\"zone\":\"+01:00\",",
              "{\"heading\":\"id\",\"means\":\"id\"}");
      Read read = Read.of(table.getBytes(StandardCharsets.UTF_8), told);
      assertThat(read.document()).contains("2031-03-02T10:15:00+01:00");
    }

    @Test
    void read_unitNotSaid_isNeverGuessed() {
      Read read = Read.of("id,Albumin CSF,IgG CSF (mg/L)\np-1,220,62\n");
      assertThat(read.values()).containsExactly("igg.csf 62.0");
      assertThat(read.problems()).contains("unit-missing");
    }
  }

  @Nested
  class MappingFiles {

    @Test
    void read_localHeadings_meanWhatAPersonConfirmed() {
      LocalMapping mapping =
          Mappings.columns(
              "",
              "{\"heading\":\"Nr\",\"means\":\"person.id\"},{\"heading\":\"AlbL\",\"means\":"
                  + "\"albumin\",\"in\":\"csf\",\"unit\":\"mg/L\"}");
      Read read = Read.of("Nr;AlbL\np-1;220\n".getBytes(StandardCharsets.UTF_8), mapping);
      assertThat(read.values()).containsExactly("albumin.csf 220.0");
      assertThat(read.problems()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
        strings = {
          "{\"heading\":\"Albumin CSF (mg/L)\",\"means\":\"albumin\",\"in\":\"serum\"}",
          "{\"heading\":\"Albumin CSF (mg/L)\",\"means\":\"igg\",\"in\":\"csf\"}",
          "{\"heading\":\"Albumin CSF (mg/L)\",\"means\":\"albumin\",\"in\":\"csf\",\"unit\":\"g/L\"}",
          "{\"heading\":\"Elsewhere\",\"means\":\"albumin\",\"in\":\"csf\"}"
        })
    void read_wrongMapping_isCaughtBeforeAnythingIsComputed(String column) {
      byte[] table = "id,Albumin CSF (mg/L)\np-1,220\n".getBytes(StandardCharsets.UTF_8);
      Read read = Read.of(table, Mappings.columns("", column));
      assertThat(read.refusals()).isNotEmpty();
      assertThat(read.refusals().getFirst()).matches("(mapped-otherwise|heading-missing) at .*");
    }
  }

  @Nested
  class Encodings {

    private static final String TEXT =
        "id;Erythrozyten Liquor (/µL);Gesamteiweiß Liquor (mg/L)\nä;3;410\n";

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "windows-1252", "UTF-16LE", "UTF-16BE"})
    void read_encoding_isFoundOut(String name) {
      byte[] bytes = TEXT.getBytes(Charset.forName(name));
      assertThat(Read.of(bytes, LocalMapping.NONE).values())
          .containsExactlyInAnyOrder("erythrocytes.csf 3.0", "total-protein.csf 410.0");
    }

    @Test
    void read_byteOrderMark_isNoPartOfTheFirstHeading() {
      assertThat(Read.of("\ufeff" + TEXT).values()).hasSize(2);
    }
  }

  @Nested
  class Workbooks {

    private static byte[] workbook(String rows, String... more) throws IOException {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
        part(zip, "xl/workbook.xml", "<workbook><workbookPr/></workbook>");
        part(
            zip,
            "xl/styles.xml",
            "<styleSheet><cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"22\"/><xf numFmtId=\"9\"/>"
                + "</cellXfs></styleSheet>");
        part(
            zip,
            "xl/sharedStrings.xml",
            "<sst><si><t>person.id</t></si><si><r><t>albumin</t></r><r><t>.csf</t></r></si></sst>");
        part(
            zip,
            "xl/worksheets/sheet1.xml",
            String.join("", more) + "<worksheet><sheetData>" + rows + "</sheetData></worksheet>");
      }
      return bytes.toByteArray();
    }

    private static void part(ZipOutputStream zip, String name, String text) throws IOException {
      zip.putNextEntry(new ZipEntry(name));
      zip.write(text.getBytes(StandardCharsets.UTF_8));
      zip.closeEntry();
    }

    private static final String ROWS =
        "<row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c><c r=\"B1\" t=\"s\"><v>1</v></c>"
            + "<c r=\"C1\" t=\"inlineStr\"><is><t>csf.at</t></is></c>"
            + "<c r=\"D1\" t=\"inlineStr\"><is><t>hematocrit (blood)</t></is></c></row>"
            + "<row r=\"2\"><c r=\"A2\" t=\"inlineStr\"><is><t>p-1</t></is></c>"
            + "<c r=\"B2\"><v>6.0999999999999996</v></c><c r=\"C2\" s=\"1\"><v>47909.427083333336</v></c>"
            + "<c r=\"D2\" s=\"2\"><v>0.41</v></c></row>";

    @Test
    void read_workbook_keepsTypedDigitsDatesAndPercents() throws IOException {
      Read read = Read.of(workbook(ROWS), LocalMapping.NONE.in(java.time.ZoneOffset.ofHours(1)));
      assertThat(read.document()).contains("6.1,").contains("2031-03-02T10:15:00+01:00");
      assertThat(read.values()).containsExactly("albumin.csf 6.1", "hematocrit.blood 0.41");
    }

    private static String cell(String place, String text) {
      return "<c r=\"%s\" t=\"inlineStr\"><is><t>%s</t></is></c>".formatted(place, text);
    }

    @Test
    void read_workbookOfCellsThatSpanRows_saysThePersonInEach() throws IOException {
      String rows =
          "<row r=\"1\">"
              + cell("A1", "person.id")
              + cell("B1", "albumin.csf")
              + cell("C1", "albumin.serum")
              + "</row>"
              + "<row r=\"2\">"
              + cell("A2", "p-1")
              // What a workbook holds of 0.1 + 0.2, shown as 0.3 (15 digits).
              + "<c r=\"B2\"><v>0.30000000000000004</v></c></row>"
              + "<row r=\"3\"><c r=\"C3\"><v>42000</v></c></row></sheetData>"
              + "<mergeCells><mergeCell ref=\"A2:A3\"/></mergeCells><sheetData>";
      Read read = Read.of(workbook(rows), LocalMapping.NONE);
      assertThat(Read.values(read.workup(0))).containsExactly("albumin.csf 0.3");
      assertThat(read.workup(1).workup().panel().person().id()).contains("p-1");
    }

    @Test
    void read_sheetBeforeTheResults_isPassedOverAndSaid() throws IOException {
      String cover = "<row r=\"1\">" + cell("A1", "Report of the laboratory") + "</row>";
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
        String sheet = "<worksheet><sheetData>%s</sheetData></worksheet>";
        String rows =
            "<row r=\"1\">%s</row><row r=\"2\"><c r=\"A2\"><v>220</v></c></row>"
                .formatted(cell("A1", "albumin.csf") + cell("B1", "albumin.serum"));
        part(zip, "xl/workbook.xml", "<workbook><workbookPr/></workbook>");
        part(zip, "xl/worksheets/sheet1.xml", sheet.formatted(cover));
        part(zip, "xl/worksheets/sheet2.xml", sheet.formatted(rows));
      }
      Read read = Read.of(bytes.toByteArray(), LocalMapping.NONE);
      assertThat(read.values()).containsExactly("albumin.csf 220.0");
      assertThat(read.problems()).containsExactly("not-a-result");
      assertThat(read.document()).contains("xl/worksheets/sheet1.xml");
    }

    @Test
    void read_zipBomb_refused() throws IOException {
      byte[] bomb = workbook(" ".repeat(60_000_000));
      assertThat(bomb.length).isLessThan(200_000);
      assertThat(Read.of(bomb, LocalMapping.NONE).refusals())
          .singleElement()
          .asString()
          .startsWith("zip");
    }

    @Test
    void read_entityInAWorkbook_refused() throws IOException {
      byte[] attack = workbook(ROWS, "<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]>");
      assertThat(Read.of(attack, LocalMapping.NONE).refusals())
          .singleElement()
          .asString()
          .startsWith("zip");
    }
  }

  @Test
  void read_textThatIsNothing_saysSoAsBefore() {
    assertThat(Read.of("hello").refusals()).singleElement().asString().startsWith("not-json");
    assertThat(Read.of("").refusals()).singleElement().asString().startsWith("file-empty");
  }
}
