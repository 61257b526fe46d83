package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.bands.BandVerdict;
import cistern.gel.image.Picture;
import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.lanes.LaneKind;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelProblem.Code;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading.Quality;
import cistern.gel.reading.PairReading;
import cistern.gel.synthetic.GelMaker;
import cistern.gel.synthetic.Level;
import cistern.gel.synthetic.PairTruth;
import cistern.gel.synthetic.SyntheticGel;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Every expected number is the ground truth of an invented gel, unless said otherwise. */
class GelReaderTest {
  private static final GelReader READER = new GelReader(GelFacts.standard());

  /** Seed 3 of the easy level: ten lanes, every sort of pair, light on dark. */
  private static final SyntheticGel GEL = GelMaker.of(Level.EASY, 3);

  private static GelReading read(Picture picture, LanePlan plan) {
    return READER.read(picture, "gel.png", plan);
  }

  /** The CSF-only bands of each pair, −1 where no pattern is given. */
  private static List<Integer> counts(GelReading reading) {
    return reading.pairs().stream()
        .map(p -> p.pattern().isEmpty() ? -1 : p.counts().orElseThrow().csfOnly())
        .toList();
  }

  private static Picture turned(Picture p, boolean mirrored, boolean inverted) {
    char[] samples = new char[p.width() * p.height()];
    for (int y = 0; y < p.height(); y++) {
      for (int x = 0; x < p.width(); x++) {
        int v = p.at(mirrored ? p.width() - 1 - x : x, y);
        samples[y * p.width() + x] = (char) (inverted ? Picture.WHITE - v : v);
      }
    }
    return Picture.of(p.width(), p.height(), samples);
  }

  @Nested
  class Truth {
    @Test
    void read_placedLanes_countsAndPatternsAreTrue() {
      GelReading reading = read(GEL.toPicture(), GEL.toPlan());
      for (int i = 0; i < GEL.pairs().size(); i++) {
        PairTruth truth = GEL.pairs().get(i);
        PairReading pair = reading.pairs().get(i);
        if (truth.isBad()) {
          assertThat(pair.pattern()).isEmpty();
          assertThat(pair.verdict()).isEqualTo(BandVerdict.UNDETERMINED);
          assertThat(pair.needsReview()).isTrue();
        } else {
          assertThat(pair.counts().orElseThrow().csfOnly()).isEqualTo(truth.csfOnly());
          assertThat(pair.pattern().orElseThrow().number()).isEqualTo(truth.pattern());
        }
      }
      assertThat(reading.picture().polarity()).isEqualTo(Polarity.LIGHT_ON_DARK);
    }

    @Test
    void read_mispairedSerum_saysSo() {
      GelReading reading = read(GEL.toPicture(), GEL.toPlan());
      int mispaired =
          IntStream.range(0, GEL.pairs().size())
              .filter(i -> GEL.pairs().get(i).kind() == PairTruth.Case.MISPAIRED)
              .findFirst()
              .orElseThrow();
      assertThat(reading.pairs().get(mispaired).problems())
          .extracting(GelProblem::code)
          .contains(Code.MISPAIRED_SERUM);
    }

    @Test
    void read_emptyLane_isUnreadable() {
      GelReading reading = read(GEL.toPicture(), GEL.toPlan());
      assertThat(reading.lanes().get(8).quality()).isEqualTo(Quality.UNREADABLE);
      assertThat(reading.pairs().get(4).problems())
          .extracting(GelProblem::code)
          .contains(Code.LANE_UNREADABLE);
    }

    @Test
    void read_fewGelsOfEachLevel_mostAreRight() {
      for (Level level : Level.values()) {
        Score score = Score.of(READER, level, 900, 4);
        assertThat(score.yes()).as(score.toText()).isGreaterThanOrEqualTo(0.9);
        assertThat(score.pattern()).as(score.toText()).isGreaterThanOrEqualTo(0.85);
        assertThat(score.found()).as(score.toText()).isGreaterThanOrEqualTo(0.95);
      }
    }

    @Test
    void read_bandsOfALane_lieWhereTheyWereDrawn() {
      GelReading reading = read(GEL.toPicture(), GEL.toPlan());
      List<Double> drawn = GEL.lanes().get(6).bandY();
      assertThat(reading.lanes().get(6).bands()).hasSameSizeAs(drawn);
      for (int i = 0; i < drawn.size(); i++) {
        assertThat(reading.lanes().get(6).bands().get(i).y()).isCloseTo(drawn.get(i), within(1.5));
      }
    }
  }

  @Nested
  class Names {
    @Test
    void read_noNames_pairsNeighboursForReview() {
      GelReading reading = read(GEL.toPicture(), LanePlan.NONE);
      assertThat(reading.lanes()).allMatch(l -> l.kind() == LaneKind.UNKNOWN).hasSize(9);
      assertThat(reading.pairs()).allMatch(PairReading::needsReview).hasSize(5);
      assertThat(reading.pairs().getLast().problems())
          .extracting(GelProblem::code)
          .containsExactly(Code.LANE_MISSING);
    }

    @Test
    void read_otherCount_noPairHasAPattern() {
      GelReading reading = read(GEL.toPicture(), LanePlan.parse("csf,serum,csf,serum"));
      assertThat(reading.pairs()).hasSize(2).allMatch(p -> p.pattern().isEmpty());
      assertThat(reading.pairs()).allMatch(p -> p.counts().isEmpty() && p.needsReview());
      assertThat(reading.problems().getFirst().code()).isEqualTo(Code.LANE_COUNT_DIFFERS);
      assertThat(reading.problems().getFirst().text()).contains("4 lanes").contains("9 were");
    }

    @Test
    void read_blankNamed_isLeftOutOfTheCount() {
      LanePlan plan = LanePlan.parse("csf,serum,csf,serum,csf,serum,csf,serum,blank,serum");
      GelReading reading = read(GEL.toPicture(), plan);
      assertThat(reading.pairs()).hasSize(5);
      assertThat(reading.pairs().getFirst().counts().orElseThrow().csfOnly())
          .isEqualTo(GEL.pairs().getFirst().csfOnly());
      assertThat(reading.pairs().getLast().problems())
          .extracting(GelProblem::code)
          .containsExactly(Code.LANE_MISSING);
      assertThat(reading.problems()).extracting(GelProblem::code).contains(Code.NO_CONTROLS);
    }
  }

  /** Laws of the whole reader: what is done to the picture alone does not change the reading. */
  @Nested
  class Laws {
    private final List<Integer> counts = counts(read(GEL.toPicture(), GEL.toPlan()));

    @Test
    void read_inverted_sameCountsOtherPolarity() {
      GelReading reading = read(turned(GEL.toPicture(), false, true), GEL.toPlan());
      assertThat(counts(reading)).isEqualTo(counts);
      assertThat(reading.picture().polarity()).isEqualTo(Polarity.DARK_ON_LIGHT);
    }

    @Test
    void read_mirrored_sameCountsInReverse() {
      LanePlan plan =
          LanePlan.parse("serum,serum:3,csf:3,serum:2,csf:2,serum:1,csf:1,serum:0,csf:0");
      GelReading reading = read(turned(GEL.toPicture(), true, false), plan);
      assertThat(counts(GelReaderTest.withoutLonely(reading))).isEqualTo(counts.subList(0, 4));
    }

    @Test
    void read_onItsSide_sameCountsAcross() {
      GelReading reading = read(GEL.toPicture().toTransposed(), GEL.toPlan());
      assertThat(reading.picture().posture()).isEqualTo(Posture.ACROSS);
      assertThat(counts(reading)).isEqualTo(counts);
    }

    @Test
    void read_halfTheContrast_sameCounts() {
      Picture p = GEL.toPicture();
      char[] soft = new char[p.width() * p.height()];
      for (int i = 0; i < soft.length; i++) {
        soft[i] = (char) (16_384 + p.at(i % p.width(), i / p.width()) / 2);
      }
      GelReading reading = read(Picture.of(p.width(), p.height(), soft), GEL.toPlan());
      assertThat(counts(reading)).isEqualTo(counts);
    }

    @Test
    void read_twiceThePixels_sameCounts() {
      Picture p = GEL.toPicture();
      int w = 3 * p.width();
      int h = 3 * p.height();
      char[] large = new char[w * h];
      for (int i = 0; i < large.length; i++) {
        large[i] = p.at(i % w / 3, i / w / 3);
      }
      GelReading reading = read(Picture.of(w, h, large), LanePlan.NONE);
      GelReading small = read(p, LanePlan.NONE);
      assertThat(reading.lanes()).hasSameSizeAs(small.lanes());
      assertThat(reading.lanes().getFirst().xCentre())
          .isCloseTo(3 * small.lanes().getFirst().xCentre() + 1, within(6.0));
      assertThat(reading.pairs().getFirst().counts().orElseThrow().csfOnly())
          .isEqualTo(small.pairs().getFirst().counts().orElseThrow().csfOnly());
    }
  }

  private static GelReading withoutLonely(GelReading r) {
    return new GelReading(
        r.picture(),
        r.lanes(),
        r.pairs().stream().filter(p -> p.counts().isPresent()).toList(),
        r.problems());
  }

  @Test
  void read_grey_noLaneIsFound() {
    char[] grey = new char[400 * 300];
    java.util.Arrays.fill(grey, (char) 40_000);
    GelReading reading = read(Picture.of(400, 300, grey), LanePlan.NONE);
    assertThat(reading.lanes()).isEmpty();
    assertThat(reading.problems()).extracting(GelProblem::code).containsExactly(Code.FAINT);
  }
}
