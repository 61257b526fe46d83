package cistern.exchange.intake;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandReport;
import cistern.cohort.Recorded;
import cistern.exchange.workup.RecordedReader;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.Procedure;
import org.junit.jupiter.api.Test;

/** Fields of a work-up that a table names by their path, and what a cohort keeps of a work-up. */
class NamedFieldsTest {

  private static final RecordedReader RECORDED = RecordedReader.of(Facts.standard());

  private static Recorded recorded(Read read) {
    return RECORDED.read(read.workup().document());
  }

  @Test
  void read_pathsAsHeadings_goWhereTheyPoint() {
    Read read =
        Read.of(
            """
            id,albumin.csf,albumin.serum,finalDiagnosis,invented,note,procedure.done.needle.tip,\
            procedure.done.needle.gauge,procedure.done.operator,procedure.done.complications,\
            procedure.after.sent.0.test,procedure.after.sent.1.test,draws.csf.volumeMl
            w-1,220,42000,12,yes,7,cutting,20,3,tired; sore,cells,culture,8.5
            """);
    Procedure procedure = read.workup().workup().procedure();

    assertThat(read.problems()).isEmpty();
    assertThat(read.values())
        .containsExactlyInAnyOrder("albumin.csf 220.0", "albumin.serum 42000.0");
    assertThat(procedure.done().needle().tip()).isEqualTo(Needle.Tip.CUTTING);
    assertThat(procedure.done().needle().gauge()).hasValue(20);
    // texts stay texts although they look like numbers
    assertThat(procedure.done().operator()).contains("3");
    assertThat(recorded(read).diagnosis()).contains("12");
    assertThat(procedure.done().complications()).containsExactly("tired", "sore");
    assertThat(procedure.after().sent())
        .extracting(sent -> sent.test().code())
        .containsExactly("cells", "culture");
    assertThat(read.workup().workup().panel().csf().volumeMl()).hasValue(8.5);
    assertThat(read.workup().workup().remarks().isInvented()).isTrue();
  }

  @Test
  void read_aPathBesideAColumnOfTheSameBranch_keepsBoth() {
    Read read =
        Read.of(
            """
            id,csf.at,draws.csf.volumeMl,albumin.csf
            w-1,2031-03-02T10:15:00Z,9,220
            """);

    assertThat(read.workup().workup().panel().csf().at()).isPresent();
    assertThat(read.workup().workup().panel().csf().volumeMl()).hasValue(9);
  }

  @Test
  void recorded_nothingSaid_isNothing() {
    Read read =
        Read.of(
            """
            {"workup": 1, "id": "w-1", "results": [
              {"analyte": "albumin", "in": "csf", "value": 220, "unit": "mg/L"}]}
            """);

    assertThat(recorded(read)).isEqualTo(Recorded.NOTHING);
  }

  @Test
  void recorded_statusAndSecondReading_areKept() {
    String workup =
        """
        {"workup": 2, "id": "w-1", "finalDiagnosis": "%s",
         "secondReading": {"csfOnly": 4, "shared": 0}, "results": [
          {"analyte": "albumin", "in": "csf", "value": 220, "unit": "mg/L", "status": "%s"}]}
        """;
    Recorded amended = recorded(Read.of(workup.formatted("ms", "amended")));
    Recorded known = recorded(Read.of(workup.formatted("unknown", "final")));

    assertThat(amended.isAmended()).isEqualTo(Answer.YES);
    assertThat(amended.diagnosis()).contains("ms");
    assertThat(amended.second()).get().isInstanceOf(BandReport.Counted.class);
    assertThat(known.isAmended()).isEqualTo(Answer.NO);
    assertThat(known.diagnosis()).isEmpty();
  }
}
