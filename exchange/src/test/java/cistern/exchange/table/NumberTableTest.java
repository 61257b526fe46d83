package cistern.exchange.table;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.json.InputProblem;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.List;
import org.junit.jupiter.api.Test;

class NumberTableTest {

  private static final List<Sample> SAMPLES =
      List.of(Sample.csf(Analyte.ALBUMIN), Sample.serum(Analyte.ALBUMIN), Sample.csf(Analyte.IGG));

  @Test
  void read_rows_takesNumbersAndLeavesOutWhatIsNone() {
    NumberTable table = NumberTable.of("\ufeffid;albumin.serum; albumin.csf ;note", SAMPLES);
    NumberTable.Columns read =
        table.read(
            List.of(
                "a;41000;205.5;x", "", "b;<300;1e2;\"x;y\"", "c;41000;many", "d;41000", "e;-1;2"),
            10);

    assertThat(table.found()).containsExactly("albumin.csf", "albumin.serum");
    assertThat(read.columns().get("albumin.csf")).containsExactly(205.5, 100, Double.NaN);
    assertThat(read.columns().get("albumin.serum")).containsExactly(41_000, Double.NaN, 41_000);
    assertThat(read.columns().get("igg.csf")).containsOnly(Double.NaN);
    assertThat(read.refused()).isEqualTo(2);
    // ten lines stand before; the fourth and the sixth of these are not read
    assertThat(read.problems())
        .extracting(InputProblem::place)
        .containsExactly("row 14, albumin.csf", "row 16, albumin.serum");
  }
}
