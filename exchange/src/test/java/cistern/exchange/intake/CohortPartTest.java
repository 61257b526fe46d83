package cistern.exchange.intake;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.cohort.Distribution;
import cistern.exchange.intake.CohortNumbers.Part;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.table.NumberTable;
import cistern.exchange.workup.WorkupReading;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class CohortPartTest {

  private static final Facts FACTS = Facts.standard();

  @Test
  void read_partOfATable_namesTheRowsOfTheFileAndGivesMembers() {
    String rows =
        "id,ageYears,albumin.csf,albumin.serum\na,30,200,40000\nb,31,200,40000\nc,32,-1,4\n";
    List<WorkupReading> readings = new ArrayList<>();
    new CohortPart("a.csv", rows, 100).read(Intake.of(FACTS, LocalMapping.NONE), readings::add);
    List<Understood> valid =
        readings.stream().filter(Understood.class::isInstance).map(Understood.class::cast).toList();
    CohortReading reading = CohortReading.of(FACTS);

    // the third row under the heading is row 4 of the part, row 104 of the file
    assertThat(readings)
        .filteredOn(WorkupReading.NotValid.class::isInstance)
        .allSatisfy(r -> assertThat(r.toString()).contains("row 104"));
    assertThat(valid).hasSizeGreaterThanOrEqualTo(2);
    assertThat(reading.interpret(valid.getFirst()).id()).isEqualTo("a");
    assertThat(reading.profile(valid).people()).isEqualTo(valid.size());
    assertThat(reading.profile(List.of()).people()).isZero();
  }

  @Test
  void numbers_ofTwoParts_mergeAndLeaveZerosOut() {
    CohortNumbers numbers = CohortNumbers.of(FACTS, false);
    NumberTable table = numbers.table("albumin.csf,albumin.serum");
    Part one = numbers.read(table, List.of("200,40000", "x,1"), 1);
    Part both = one.merge(numbers.read(table, List.of("200,0"), 3)).merge(Part.NONE);

    assertThat(CohortNumbers.isEnough(table)).isTrue();
    assertThat(both.summary().rows()).isEqualTo(2);
    assertThat(
            both.summary()
                .values()
                .getOrDefault(FindingCode.ALBUMIN_QUOTIENT, Distribution.NONE)
                .moments()
                .count())
        .isEqualTo(1);
    assertThat(both.refused()).isEqualTo(1);
    assertThat(both.problems()).singleElement().asString().contains("row 3");
  }
}
