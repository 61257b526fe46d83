package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ColumnsMixedUpTest {

  private static final Facts FACTS = Facts.standard();
  private static final Sample CSF = Sample.csf(Analyte.ALBUMIN);
  private static final Sample SERUM = Sample.serum(Analyte.ALBUMIN);

  /** Rows of invented albumin values that rise by one in a hundred from row to row. */
  private static ColumnProfile rows(int people, double csf, double serum, double age, String sex) {
    return IntStream.range(0, people)
        .mapToObj(
            i -> {
              double factor = 1 + i / 100.0;
              Person person =
                  new Person(Optional.empty(), OptionalDouble.of(age), Optional.of(sex));
              List<Measurement> results =
                  List.of(
                      Measurement.of(CSF, Interval.of(csf * factor)),
                      Measurement.of(SERUM, Interval.of(serum * factor)));
              return ColumnProfile.of(Panel.of(person, results), FACTS);
            })
        .reduce(ColumnProfile.NONE, ColumnProfile::merge);
  }

  private static List<String> columns(ColumnProfile profile) {
    return ColumnsMixedUp.check(profile, FACTS).stream()
        .flatMap(m -> m.columns().stream())
        .distinct()
        .toList();
  }

  @Test
  void check_rightColumns_findsNothing() {
    assertThat(ColumnsMixedUp.check(rows(40, 220, 40_000, 44, "female"), FACTS)).isEmpty();
  }

  @Test
  void check_exchangedFluids_namesBoth() {
    assertThat(columns(rows(40, 40_000, 220, 44, "female")))
        .containsExactly("albumin.serum", "albumin.csf");
  }

  @Test
  void check_otherUnit_saysWhichFactorWouldBePlausible() {
    // g/L where mg/L is said: a thousandth
    List<ColumnsMixedUp> found = ColumnsMixedUp.check(rows(40, 0.22, 40_000, 44, "female"), FACTS);
    assertThat(found).hasSize(1);
    assertThat(found.getFirst().text()).contains("albumin.csf", "1000 times as much");
  }

  @Test
  void check_agesAndSexes_otherColumnsAreSeen() {
    assertThat(columns(rows(40, 220, 40_000, 440, "7"))).containsExactly("ageYears", "sex");
  }

  @Test
  void check_nineRows_areTooFewToTell() {
    assertThat(columns(rows(9, 40_000, 220, 440, "7"))).isEmpty();
    assertThat(columns(rows(10, 40_000, 220, 440, "7"))).isNotEmpty();
  }

  @Test
  void spectrum_quantile_isWithinHalfAPerCent() {
    Spectrum spectrum =
        IntStream.rangeClosed(1, 1_001)
            .mapToObj(i -> Spectrum.of(i / 7.0))
            .reduce(Spectrum.NONE, Spectrum::merge);

    // the middle of 1/7 … 1001/7
    assertThat(spectrum.quantile(0.5).orElseThrow()).isCloseTo(501 / 7.0, within(0.006 * 501 / 7));
    assertThat(Spectrum.of(0).quantile(0.5)).hasValue(0);
    assertThat(Spectrum.NONE.quantile(0.5)).isEmpty();
  }
}
