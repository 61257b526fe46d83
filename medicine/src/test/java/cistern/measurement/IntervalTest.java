package cistern.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import org.junit.jupiter.api.Test;

class IntervalTest {

  private static final Interval BELOW = Interval.below(4);
  private static final Interval ABOVE = Interval.above(10);

  @Test
  void dividedBy_exactNumbers_isTheQuotient() {
    assertThat(Interval.of(3).dividedBy(Interval.of(4))).isEqualTo(Interval.of(0.75));
  }

  @Test
  void dividedBy_censoredEnds_reachesZeroAndInfinity() {
    assertThat(BELOW.dividedBy(Interval.of(2))).isEqualTo(new Interval(0, 2, true));
    assertThat(Interval.of(8).dividedBy(BELOW))
        .isEqualTo(new Interval(2, Double.POSITIVE_INFINITY, true));
    assertThat(BELOW.dividedBy(BELOW)).isEqualTo(new Interval(0, Double.POSITIVE_INFINITY, true));
    assertThat(ABOVE.dividedBy(ABOVE)).isEqualTo(new Interval(0, Double.POSITIVE_INFINITY, true));
    assertThat(Interval.of(0).dividedBy(BELOW)).isEqualTo(new Interval(0, 0, true));
  }

  @Test
  void times_aFactor_scalesBothEnds() {
    assertThat(BELOW.times(2.5)).isEqualTo(new Interval(0, 10, true));
  }

  @Test
  void exactly_ofACensoredNumber_isAProgrammingError() {
    assertThat(Interval.of(2).exactly()).isEqualTo(2);
    assertThatIllegalStateException().isThrownBy(BELOW::exactly);
  }

  @Test
  void of_impossibleEnds_isRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Interval(2, 1, true));
    assertThatIllegalArgumentException().isThrownBy(() -> new Interval(1, 2, false));
    assertThatIllegalArgumentException().isThrownBy(() -> new Interval(Double.NaN, 2, true));
  }

  @Test
  void reported_impossibleValues_areRefused() {
    Sample sample = Sample.csf(Analyte.IGG);
    assertThatIllegalArgumentException().isThrownBy(() -> Measurement.of(sample, Interval.of(-1)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Measurement.of(sample, Interval.above(Double.POSITIVE_INFINITY)));
    assertThatIllegalArgumentException().isThrownBy(() -> Interval.below(Double.NaN));
    assertThat(Interval.of(1).isExact()).isTrue();
    assertThat(Interval.below(1).isExact()).isFalse();
  }

  @Test
  void parse_codes_findsWhatIsKnown() {
    for (Analyte analyte : Analyte.values()) {
      assertThat(Analyte.parse(analyte.code())).contains(analyte);
      assertThat(analyte.isConcentration())
          .isEqualTo(analyte.unit() != CanonicalUnit.PER_UL && analyte.unit() != CanonicalUnit.ONE);
    }
    assertThat(Analyte.parse("unobtainium")).isEmpty();
    assertThat(Compartment.parse("blood")).contains(Compartment.BLOOD);
    assertThat(Compartment.parse("tears")).isEmpty();
    assertThat(Answer.parse("yes")).contains(Answer.YES);
    assertThat(Answer.parse("maybe")).isEmpty();
    assertThat(Answer.UNKNOWN.isKnown()).isFalse();
  }
}
