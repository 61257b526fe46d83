package cistern.exchange.intake;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.finding.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Text copied out of printed reports as invented laboratories lay them out, and tables that look
 * like one; the expected values are those that a reader of the page sees.
 */
class PrintedIntakeTest {

  @Test
  void read_pageWithAHeadAndColumns_isReadLineByLine() {
    Read read =
        Read.of(
            """
            Invented Reference Laboratories                       Page 1 of 2
            Patient: Doe, Jane     Patient ID: 00123     Date of birth: 1990-01-05    Sex: F
            Collected: 2031-03-02T10:15:00+01:00

            Test                   Result      Flag    Units     Reference Interval
            Albumin, CSF           20                  mg/dL     11-48
            IgG, CSF               5.6         H       mg/dL     0.0-8.6
            Albumin, Serum         4.4                 g/dL      3.5-5.0
            IgG, Serum             1080                mg/dL     600-1640
            Oligoclonal Bands, CSF Positive    A                 Negative
            """);

    assertThat(read.refusals()).isEmpty();
    assertThat(read.values())
        .containsExactlyInAnyOrder(
            "albumin.csf 200.0", "igg.csf 56.0", "albumin.serum 44000.0", "igg.serum 10800.0");
    assertThat(read.document())
        .contains("\"id\": \"00123\"", "\"name\": \"Doe, Jane\"", "\"birthDate\": \"1990-01-05\"")
        .contains("\"sex\": \"female\"", "2031-03-02T10:15:00+01:00", "\"result\": \"positive\"");
  }

  @Test
  void read_pageWithTheMaterialAboveAndSignsBehindValues_isRead() {
    Read read =
        Read.of(
            """
            Labor Erfunden
            Pat.-Nr.: 4711 Geburtsdatum: 1985-04-03
            Material: Liquor
            Albumin   220,5   mg/l   < 350
            IgG        31,2 + mg/l   < 34
            Material: Serum
            Albumin    42,1   g/l
            """);

    assertThat(read.values())
        .containsExactlyInAnyOrder("albumin.csf 220.5", "igg.csf 31.2", "albumin.serum 42100.0");
    assertThat(read.document()).contains("\"id\": \"4711\"");
  }

  @Test
  void read_columnsUnderHeadingsFarToTheRight_areReadByFluid() {
    Read read =
        Read.of(
            """
            Pat.-Nr.: 4711
                             Liquor      Serum      Einheit
            Albumin          220,5       42100      mg/l
            IgG              31,2        11200      mg/l
            """);

    assertThat(read.values())
        .containsExactlyInAnyOrder(
            "albumin.csf 220.5", "albumin.serum 42100.0", "igg.csf 31.2", "igg.serum 11200.0");
  }

  @Test
  void read_pageOfTwoPersons_refusedWithBothPlaces() {
    String page =
        """
        Patient ID: p-1     Page 1
        CSF
        Albumin    220    mg/L
        Patient ID: %s     Page 2
        Serum
        Albumin    42    g/L
        """;

    assertThat(Read.of(page.formatted("p-1")).values()).hasSize(2);
    assertThat(Read.of(page.formatted("p-2")).refusals())
        .singleElement()
        .asString()
        .startsWith("two-persons at line 4")
        .contains("line 1");
  }

  @Test
  void read_fluidBehindAPreposition_isRead() {
    Read read =
        Read.of(
            """
            Albumin im Liquor: 220 mg/L
            Albumin im Serum: 42,1 g/L
            IgG dans le LCR: 30 mg/L
            """);
    assertThat(read.values())
        .containsExactlyInAnyOrder("albumin.csf 220.0", "albumin.serum 42100.0", "igg.csf 30.0");
  }

  @Test
  void read_unitBehindTheValueAgainstThatOfTheName_isNotRead() {
    Read read = Read.of("Material: Liquor\nAlbumin [mg/L] 220 g/L\nIgG [mg/L] 30 mg/l\n");
    assertThat(read.values()).containsExactly("igg.csf 30.0");
    assertThat(read.problems()).containsExactly("unit-not-understood");
    assertThat(read.document()).contains("line 2", "mg/L, g/L");
  }

  @Test
  void read_valueInASecondUnit_isKeptAndNoRange() {
    Read read =
        Read.of("Material: Liquor\nGlucose 3.3 mmol/L 60 mg/dL\nAlbumin 220 mg/L (100-350)\n");
    assertThat(read.values()).containsExactlyInAnyOrder("glucose.csf 3.3", "albumin.csf 220.0");
    assertThat(read.problems()).containsExactly("note");
    assertThat(read.document())
        .contains("\"value\": \"60 mg/dL\"", "\"reportedLimit\": \"100-350\"")
        .doesNotContain("\"reportedLimit\": \"60\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1970-01-05;Doe Jane", ";Sample Bea"})
  void read_rowsOfOneIdentifierThatNameTwoPersons_areOfTwo(String other) {
    Read read =
        Read.of(
            """
            Patient ID;Birth date;Patient name;Test;Specimen;Result;Unit
            p-1;1990-01-05;Doe Jane;Albumin;CSF;220;mg/L
            p-1;%s;Albumin;Serum;42;g/L
            p-1;1990-01-05;Doe, J.;IgG;CSF;30;mg/L
            """
                .formatted(other));
    assertThat(read.count()).isEqualTo(2);
    assertThat(Read.values(read.workup(0))).containsExactly("albumin.csf 220.0", "igg.csf 30.0");
    assertThat(Read.values(read.workup(1))).containsExactly("albumin.serum 42000.0");
  }

  @Test
  void read_rowsWithoutTheirPerson_areNobodysButTheirOwn() {
    Read read =
        Read.of(
            """
            Patient ID,Test,Specimen,Result,Unit
            p-1,Albumin,CSF,220,mg/L
            ,IgG,CSF,31,mg/L
            p-2,Albumin,CSF,180,mg/L
            ,IgG,CSF,20,mg/L
            """);

    assertThat(read.refusals()).isEmpty();
    assertThat(read.count()).isEqualTo(4);
    assertThat(read.workup(0).workup().problems().stream().map(Problem::code))
        .contains("headings-not-confirmed");
  }
}
