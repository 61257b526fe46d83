package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandPattern;
import cistern.gel.image.Picture;
import cistern.gel.image.Polarity;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelProblem.Code;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.PairReading;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Every expected number is what the test itself painted. */
class PaintedGelTest {
  private static final GelReader READER = new GelReader(GelFacts.standard());
  private static final String FOUR = "csf,serum,csf,serum,csf,serum,csf,serum";

  private static GelReading read(PaintedGel gel, String names) {
    return READER.read(gel.toPicture(), "gel.png", LanePlan.parse(names));
  }

  private static List<Integer> counts(GelReading reading) {
    return reading.pairs().stream().map(p -> p.counts().orElseThrow().csfOnly()).toList();
  }

  private static PaintedGel four() {
    return new PaintedGel(135)
        .person(330, 200, 280, 430)
        .person(380)
        .person(300, 250)
        .person(350, 300, 460);
  }

  @Test
  void read_asManyLanesAsNames_areNeverSaidToDiffer() {
    GelReading reading = read(four(), "csf,serum,csf,serum,csf,serum,blank,blank");

    assertThat(reading.problems())
        .extracting(GelProblem::code)
        .doesNotContain(Code.LANE_COUNT_DIFFERS);
    assertThat(counts(reading)).containsExactly(3, 0, 1);
    assertThat(reading.pairs()).allMatch(p -> p.review().toString().contains("in another way"));
  }

  @Nested
  class ApplicationMarks {
    @Test
    void read_markAcrossAllLanes_isNamedAndNotCounted() {
      GelReading reading = read(four().mark(360, 0.01), FOUR);

      assertThat(counts(reading)).containsExactly(3, 0, 1, 2);
      assertThat(reading.problems()).extracting(GelProblem::code).contains(Code.APPLICATION_MARK);
    }

    @Test
    void read_broadMark_leavesNothingBehind() {
      GelReading reading = read(four().mark(520, 0.01).broad(10), FOUR);

      assertThat(counts(reading)).containsExactly(3, 0, 1, 2);
      assertThat(reading.pairs()).allMatch(p -> p.counts().orElseThrow().shared() == 0);
    }

    @Test
    void read_bandOnTheMark_isLookedAt() {
      PaintedGel gel =
          new PaintedGel(135)
              .person(330, 200, 362)
              .person(380)
              .person(300, 250)
              .person(350, 300, 460);
      GelReading reading = read(gel.mark(360, 0.01), FOUR);

      assertThat(counts(reading).subList(1, 4)).containsExactly(0, 1, 2);
      assertThat(reading.problems()).extracting(GelProblem::code).contains(Code.APPLICATION_MARK);
      assertThat(reading.pairs())
          .extracting(p -> p.review().toString().contains("under the mark"))
          .containsExactly(true, false, false, false);
    }

    @Test
    void read_bandsOfMostLanesOnOneRow_areNoMark() {
      PaintedGel gel =
          new PaintedGel(135)
              .lane(330, 240, 300)
              .lane(330, 240, 300)
              .lane(380, 240, 200)
              .lane(380, 240, 200)
              .person(300, 240, 420)
              .person(350);

      GelReading reading = read(gel, FOUR);

      assertThat(counts(reading)).containsExactly(0, 0, 2, 0);
      assertThat(reading.problems())
          .extracting(GelProblem::code)
          .doesNotContain(Code.APPLICATION_MARK);
    }
  }

  @Nested
  class Bands {
    @Test
    void read_scratchAcrossTheGel_leavesNoBandsBesideIt() {
      assertThat(counts(read(four().scratch(520), FOUR))).containsExactly(3, 0, 1, 2);
    }

    @Test
    void read_twoBandsThatNearlyTouch_areTwo() {
      PaintedGel gel =
          new PaintedGel(135)
              .person(330, 200, 208.6, 430)
              .person(380)
              .person(300, 250)
              .person(350, 300, 460);

      assertThat(counts(read(gel, FOUR))).containsExactly(3, 0, 1, 2);
    }
  }

  @Nested
  class Ends {
    @Test
    void read_endOfTheMembraneAcrossThreeLanes_isNoBand() {
      PaintedGel gel = new PaintedGel(300).person(330, 200, 280, 430).lane(380).top(12);
      GelReading reading = read(gel, "csf,serum,control");

      assertThat(counts(reading)).containsExactly(3);
      assertThat(reading.pairs().getFirst().counts().orElseThrow().shared()).isZero();
    }
  }

  @Nested
  class Pairs {
    @Test
    void read_nothingWhereSerumIsNamed_isUnreadable() {
      PaintedGel gel =
          new PaintedGel(135)
              .lane(330, 200, 280)
              .nothing()
              .person(380)
              .person(300, 250)
              .person(350);
      GelReading reading = read(gel, FOUR);

      assertThat(reading.pairs().getFirst().pattern()).isEmpty();
      assertThat(reading.pairs().getFirst().problems())
          .extracting(GelProblem::code)
          .contains(Code.LANE_UNREADABLE);
    }

    @Test
    void read_oneSerumBandAlone_isForReviewWhereItDecidesAndNotAnotherPersons() {
      PaintedGel gel =
          new PaintedGel(135)
              .lane(330)
              .lane(330, 250)
              .lane(330, 200, 400)
              .lane(330, 300)
              .person(330, 250)
              .person(330, 300);
      List<PairReading> pairs = read(gel, FOUR).pairs();

      assertThat(pairs.subList(0, 2))
          .allMatch(p -> p.counts().orElseThrow().serumOnly() == 1)
          .extracting(p -> p.pattern().orElseThrow())
          .containsExactly(BandPattern.NORMAL, BandPattern.LOCAL);
      assertThat(pairs.subList(0, 2))
          .extracting(p -> p.review().toString().contains("no counterpart"))
          .containsExactly(false, true);
    }
  }

  @Nested
  class Names {
    @Test
    void read_fewerNamesThanLanes_countsDiffer() {
      GelReading reading = read(four(), "csf,serum,csf,serum");

      assertThat(reading.problems()).extracting(GelProblem::code).contains(Code.LANE_COUNT_DIFFERS);
      assertThat(reading.lanes()).hasSize(8);
      assertThat(reading.pairs()).allMatch(p -> p.pattern().isEmpty());
    }

    @Test
    void read_blankWithoutAGap_namesStayAGuess() {
      PaintedGel gel = new PaintedGel(135).person(330).person(330).person(330).person(330);

      assertThat(read(gel, "csf,serum,blank,csf,serum,csf,serum,csf,serum").pairs())
          .allMatch(PairReading::needsReview);
    }

    @Test
    void read_nothingOnTheFirstLane_namesStayAGuess() {
      PaintedGel gel =
          new PaintedGel(135)
              .nothing()
              .lane(330)
              .person(250)
              .person(420, 250, 290)
              .person(340, 300, 460, 500);

      assertThat(read(gel, FOUR).pairs()).allMatch(PairReading::needsReview);
    }

    @Test
    void read_nothingOnTheFirstLaneOfARowThatABlankPins_onlyItsPairIsRefused() {
      PaintedGel gel =
          new PaintedGel(60)
              .nothing()
              .lane(330)
              .nothing()
              .person(330, 200, 280)
              .person(300, 250)
              .person(350, 300, 460);
      String names = "csf:0,serum:0,blank,csf:1,serum:1,csf:2,serum:2,csf:3,serum:3";
      GelReading reading = read(gel, names);

      assertThat(reading.problems())
          .extracting(GelProblem::code)
          .doesNotContain(Code.LANE_COUNT_DIFFERS);
      assertThat(reading.pairs())
          .extracting(p -> p.pattern().isPresent())
          .containsExactly(false, true, true, true);
    }

    @Test
    void read_nothingOnTheFirstLaneOfPeopleAlike_namesStayAGuess() {
      PaintedGel gel = new PaintedGel(135).nothing().lane(330).person(330).person(330).person(330);

      assertThat(read(gel, FOUR).pairs()).allMatch(PairReading::needsReview);
    }
  }

  @Test
  void read_smallNoisySurround_doesNotTurnThePolarity() {
    Picture gel = four().toPicture();
    char[] small = new char[520 * 420];
    for (int y = 0; y < 420; y++) {
      for (int x = 0; x < 520; x++) {
        boolean isGel = x >= 35 && x < 485 && y >= 35 && y < 385;
        double noise = 0.12 * (Math.sin(91.7 * x + 37.3 * y) * 43758.5 % 1);
        double light = isGel ? gel.at(2 * (x - 35), 2 * (y - 35)) / 65535.0 : 0.25;
        small[y * 520 + x] = (char) Math.round(65535 * Math.clamp(light + noise / 2, 0, 1));
      }
    }

    GelReading reading = READER.read(Picture.of(520, 420, small), "g", LanePlan.NONE);

    assertThat(reading.picture().polarity()).isEqualTo(Polarity.DARK_ON_LIGHT);
    assertThat(reading.lanes()).hasSize(8);
  }
}
