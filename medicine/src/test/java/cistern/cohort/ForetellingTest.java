package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.cohort.CohortMember.Foretold;
import cistern.differential.Proportion;
import cistern.fact.Facts;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ForetellingTest {

  private static Foretelling people(int happenedWith, int happenedWithout) {
    Foretelling all = Foretelling.NONE;
    for (int i = 0; i < 30; i++) {
      all = all.with(new Foretold(true, 0.5, 0.7, 0.5, 0.9), i < happenedWith);
      all = all.with(new Foretold(false, 0.5, 0.3, 0.1, 0.5), i < happenedWithout);
    }
    return all;
  }

  @Test
  void holds_asForetold_fits() {
    assertThat(people(21, 9).holds(20)).contains(true);
  }

  @Test
  void holds_theOtherWayRound_doesNotFit() {
    assertThat(people(3, 27).holds(20)).contains(false);
  }

  @Test
  void holds_tooFew_isNotSaid() {
    assertThat(people(21, 9).holds(31)).isEmpty();
    assertThat(Foretelling.NONE.arms().getFirst().expected()).isEmpty();
  }

  @Test
  void expected_thirtyPeople_isTheBinomialTails() {
    // R: qbinom(0.025, 30, 0.5), qbinom(0.975, 30, 0.9)
    assertThat(people(21, 9).arms().getFirst().expected()).contains(new ConfidenceInterval(10, 30));
  }

  @Test
  void merge_parts_isTheWhole() {
    Foretelling one = Foretelling.NONE.with(new Foretold(true, 0.5, 0.75, 0.5, 0.875), true);
    Foretelling other = Foretelling.NONE.with(new Foretold(false, 0.5, 0.25, 0.125, 0.5), false);

    assertThat(one.merge(other))
        .isEqualTo(one.with(new Foretold(false, 0.5, 0.25, 0.125, 0.5), false));
  }

  @Test
  void verified_moreOutsideThanMay_doesNotStand() {
    VerifiedLimit.Rule rule = VerifiedLimit.Rule.of(Facts.standard());

    // CLSI EP28-A3c, from memory: 2 of 20 may lie outside
    assertThat(rule.judge(new Proportion(2, 20)).orElseThrow().stands()).isTrue();
    assertThat(rule.judge(new Proportion(3, 20)).orElseThrow().stands()).isFalse();
    assertThat(rule.judge(new Proportion(0, 19))).isEmpty();
    // R: qbinom(pbinom(2, 20, 0.05), 120, 0.05)
    assertThat(rule.judge(new Proportion(0, 120)).map(VerifiedLimit::allowed))
        .isEqualTo(Optional.of(10L));
  }

  @Test
  void curve_tiesAndAll_runsFromCornerToCorner() {
    RocCurve curve = RocCurve.of(new double[] {1, 2, 3}, new double[] {0, 1});

    assertThat(curve.points())
        .isEqualTo(
            List.of(
                new RocCurve.Point(0, 0),
                new RocCurve.Point(0, 1 - 2.0 / 3),
                new RocCurve.Point(0, 1 - 1.0 / 3),
                new RocCurve.Point(0.5, 1),
                new RocCurve.Point(1, 1)));
  }
}
