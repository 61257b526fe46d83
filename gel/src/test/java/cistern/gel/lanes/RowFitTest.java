package cistern.gel.lanes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Every expected column is where the test itself put a lane. */
class RowFitTest {
  private static final int COLUMNS = 384;

  /** A profile of where middles of lanes may be, as high as told at some columns. */
  private static double[] profile(double height, int... columns) {
    double[] profile = new double[COLUMNS];
    for (int x = 0; x < COLUMNS; x++) {
      for (int column : columns) {
        double d = (x - column) / 3.0;
        profile[x] = Math.max(profile[x], height * Math.exp(-0.5 * d * d));
      }
    }
    return profile;
  }

  private static List<Integer> laid(String names, double[] profile) {
    LanePlan plan = LanePlan.parse(List.of(names.split(",")));
    return new RowFit(profile, plan.lanes(), plan.pairNumbers()).best(20).orElseThrow().columns();
  }

  private static void assertNear(List<Integer> columns, int... expected) {
    assertThat(columns).hasSize(expected.length);
    for (int i = 0; i < expected.length; i++) {
      assertThat((double) columns.get(i)).isCloseTo(expected[i], within(2.0));
    }
  }

  @Test
  void best_pairsCloserThanPeople_everyNameIsOnItsLane() {
    double[] profile = profile(0.9, 40, 64, 110, 134, 180, 204);

    assertNear(laid("csf,serum,csf,serum,csf,serum", profile), 40, 64, 110, 134, 180, 204);
  }

  @Test
  void best_blankBetweenPairs_holdsTheEmptyPlace() {
    double[] profile = profile(0.9, 40, 70, 130, 160);

    assertNear(laid("csf,serum,blank,csf,serum", profile), 40, 70, 100, 130, 160);
  }

  @Test
  void best_aLaneThatIsHardlySeen_isLaidByTheStepsOfTheOthers() {
    double[] profile = profile(0.9, 40, 70, 100, 160, 190);

    assertNear(
        laid("control,control,control,control,control,control", profile),
        40,
        70,
        100,
        130,
        160,
        190);
  }

  @Test
  void clearness_rowThatCouldStandAStepFarther_isSmall() {
    double[] six = profile(0.9, 40, 70, 100, 130, 160, 190);
    LanePlan five = LanePlan.parse(List.of("control,control,control,control,control".split(",")));
    LanePlan all =
        LanePlan.parse(List.of("control,control,control,control,control,control".split(",")));
    RowFit unclear = new RowFit(six, five.lanes(), five.pairNumbers());
    RowFit clear = new RowFit(six, all.lanes(), all.pairNumbers());

    assertThat(unclear.clearness(unclear.best(20).orElseThrow(), 20)).isLessThan(0.08);
    assertThat(clear.clearness(clear.best(20).orElseThrow(), 20)).isGreaterThan(0.5);
  }
}
