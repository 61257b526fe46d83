package cistern.gel.score;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.lanes.LaneKind;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.GelReading.PictureSeen;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.Quality;
import cistern.gel.reading.PairReading;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Shares are counted by hand from the few pairs of each test. */
class TruthScoreTest {
  private static final GelTruth TRUTH =
      new GelTruth(
          "g.png",
          "ours",
          LanePlan.parse("csf,serum"),
          List.of(new GelTruth.Place(100, 40), new GelTruth.Place(160, 40)),
          List.of(new GelTruth.Pair(0, OptionalInt.of(3), OptionalInt.of(2))));

  private static LaneReading lane(int index, LaneKind kind, double column) {
    return new LaneReading(
        index, kind, OptionalInt.of(0), column, 40, 0, Quality.GOOD, List.of(), List.of(), false);
  }

  private static GelReading reading(double csfColumn, int count, double chance) {
    PairReading.Counts counts = new PairReading.Counts(count, 0, 0, List.of(), chance, List.of());
    PairReading pair =
        new PairReading(
            0,
            OptionalInt.of(0),
            OptionalInt.of(1),
            Optional.of(counts),
            Optional.of(chance >= 0.5 ? BandPattern.LOCAL : BandPattern.NORMAL),
            BandVerdict.POSITIVE,
            List.of(),
            List.of());
    return new GelReading(
        new PictureSeen("g.png", 300, 200, Polarity.DARK_ON_LIGHT, Posture.UPRIGHT),
        List.of(lane(0, LaneKind.CSF, csfColumn), lane(1, LaneKind.SERUM, 160)),
        List.of(pair),
        List.of());
  }

  @Test
  void addNamed_rightReading_isRightInEverything() {
    TruthScore score = new TruthScore(2);
    score.addNamed(TRUTH, reading(105, 3, 0.99));
    score.addUnaided(TRUTH, reading(105, 3, 0.99));

    assertThat(score.yes()).isEqualTo(1);
    assertThat(score.placed()).isEqualTo(1);
    assertThat(score.toText())
        .contains("exact count 1.000", "pattern 1.000", "not for review 1.000", "extra 0.000");
  }

  @Test
  void addNamed_rightCountOnTheWrongLane_isWrong() {
    TruthScore score = new TruthScore(2);
    score.addNamed(TRUTH, reading(130, 3, 0.99));

    assertThat(score.yes()).isZero();
    assertThat(score.placed()).isEqualTo(0.5);
  }

  @Test
  void addNamed_surelyWrong_costsMoreThanUnread() {
    TruthScore wrong = new TruthScore(2);
    wrong.addNamed(TRUTH, reading(105, 0, 0.01));
    TruthScore unread = new TruthScore(2);
    unread.addUnread(TRUTH);

    // −ln 0.01 = 4.605 and ln 2 = 0.693
    assertThat(wrong.toText()).contains("log score 4.605", "foretold and true: 0.01 1.00 of 1");
    assertThat(unread.toText()).contains("log score 0.693", "good refused 1.000");
  }

  @Test
  void addNamed_faultyPairWithoutAPattern_isMarked() {
    GelTruth faulty =
        new GelTruth(
            "g.png",
            "ours",
            LanePlan.parse("csf,serum"),
            List.of(),
            List.of(new GelTruth.Pair(0, OptionalInt.empty(), OptionalInt.empty())));
    TruthScore score = new TruthScore(2);
    score.addUnread(faulty);
    score.addNamed(faulty, reading(105, 3, 0.99));

    assertThat(score.toText()).contains("2 bad pairs, marked 0.500");
  }
}
