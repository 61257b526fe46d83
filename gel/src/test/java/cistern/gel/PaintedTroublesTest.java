package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.gel.PaintedGel.Looks;
import cistern.gel.image.Picture;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelProblem;
import cistern.gel.reading.GelProblem.Code;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading.Quality;
import cistern.gel.reading.PairReading;
import java.util.List;
import java.util.function.IntBinaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is wrong with a gel, and how it was photographed; the test itself painted each. */
class PaintedTroublesTest {
  private static final GelReader READER = new GelReader(GelFacts.standard());
  private static final String FOUR = "csf,serum,csf,serum,csf,serum,csf,serum";

  private static GelReading read(PaintedGel gel) {
    return read(gel.toPicture());
  }

  private static GelReading read(Picture picture) {
    return READER.read(picture, "gel.png", LanePlan.parse(FOUR));
  }

  private static List<Integer> counts(GelReading reading) {
    return reading.pairs().stream().map(p -> p.counts().orElseThrow().csfOnly()).toList();
  }

  private static List<Code> codes(List<GelProblem> problems) {
    return problems.stream().map(GelProblem::code).toList();
  }

  /** Three people on the left; the last two lanes are the test's. */
  private static PaintedGel three() {
    return new PaintedGel(135)
        .person(330, 200, 280, 430)
        .person(380)
        .person(300, 250, 345, 410, 480);
  }

  private static PaintedGel four() {
    return three().person(350, 300, 460);
  }

  @Nested
  class Lanes {
    private void check(PaintedGel gel, Code code) {
      check(read(gel), code);
    }

    private void check(GelReading reading, Code code) {
      PairReading last = reading.pairs().getLast();
      assertThat(codes(last.problems())).contains(code);
      assertThat(last.needsReview()).isTrue();
      assertThat(reading.pairs().subList(0, 3)).allMatch(p -> p.problems().isEmpty());
    }

    @Test
    void read_nothingWrong_hasNoProblem() {
      assertThat(read(four()).pairs()).allMatch(p -> p.problems().isEmpty() && !p.needsReview());
    }

    @Test
    void read_laneAsDarkAsThePictureShows_isSaturated() {
      check(three().lane(new Looks(9, 1, 0, 0), 350, 300, 460).lane(350), Code.SATURATED);
    }

    @Test
    void read_bandsTwiceAsWideAsTheGels_areSmeared() {
      Looks wide = new Looks(1, 1.8, 0, 0);
      check(three().lane(wide, 350, 260, 320, 380, 460).lane(350), Code.SMEARED);
    }

    @Test
    void read_bandsThatSag_areTilted() {
      Looks sagging = new Looks(1, 1, 7, 0);
      PaintedGel gel = three().lane(sagging, 350, 260, 320, 380, 460).lane(350);
      check(read(gel.toPicture().toReduced(2)), Code.TILTED);
    }

    @Test
    void read_bandsThatLeanFarOffTheOtherLanes_areTilted() {
      Looks leaning = new Looks(1, 1, 0, 11);
      check(three().lane(leaning, 350, 260, 320, 380, 460).lane(350), Code.TILTED);
    }

    @Test
    void read_aSerumLaneOfAFifth_isALoadMismatch() {
      check(three().lane(350, 300, 460).lane(new Looks(0.2, 1, 0, 0), 350), Code.LOAD_MISMATCH);
    }

    @Test
    void read_aSerumLaneOfAlmostNothing_isFaintAndHasNoPattern() {
      PaintedGel gel = three().lane(350, 300, 460).lane(new Looks(0.02, 1, 0, 0), 350);
      PairReading last = read(gel).pairs().getLast();
      assertThat(codes(last.problems())).contains(Code.FAINT, Code.LANE_UNREADABLE);
      assertThat(last.pattern()).isEmpty();
      assertThat(last.verdict()).isEqualTo(BandVerdict.UNDETERMINED);
    }

    @Test
    void read_aPictureOfSixteenShades_isLookedAt() {
      Picture gel = four().toPicture();
      GelReading reading = read(changed(gel, (x, y) -> gel.at(x, y) / 4096 * 4096));
      assertThat(reading.pairs()).allMatch(PairReading::needsReview);
      assertThat(reading.lanes()).allMatch(l -> l.quality() != Quality.GOOD);
      assertThat(codes(reading.pairs().getFirst().problems())).contains(Code.FAINT);
      assertThat(reading.lanes().getFirst().problems().getFirst().text()).contains("shades");
    }
  }

  @Nested
  class Answers {
    @Test
    void read_oneBand_isBorderlineWithPatternOne() {
      PairReading pair = read(three().person(350, 300)).pairs().getLast();
      assertThat(pair.counts().orElseThrow().csfOnly()).isEqualTo(1);
      assertThat(pair.verdict()).isEqualTo(BandVerdict.BORDERLINE);
      assertThat(pair.pattern()).contains(BandPattern.NORMAL);
    }

    @Test
    void read_oneBandBesideSharedOnes_isBorderlineWithPatternFour() {
      PaintedGel gel = three().lane(350, 250, 300, 400).lane(350, 250, 400);
      PairReading pair = read(gel).pairs().getLast();
      assertThat(pair.counts().orElseThrow().csfOnly()).isEqualTo(1);
      assertThat(pair.verdict()).isEqualTo(BandVerdict.BORDERLINE);
      assertThat(pair.pattern()).contains(BandPattern.SYSTEMIC);
    }

    @Test
    void read_csfOnlyBandsBesideALadder_areCounted() {
      PaintedGel gel =
          three()
              .lane(330, 200, 222, 300, 320, 340, 360, 380, 430)
              .lane(330, 300, 320, 340, 360, 380);
      PairReading pair = read(gel).pairs().getLast();
      assertThat(pair.pattern()).contains(BandPattern.LADDER);
      assertThat(pair.counts().orElseThrow().csfOnly()).isEqualTo(3);
      assertThat(pair.counts().orElseThrow().shared()).isEqualTo(5);
      assertThat(pair.verdict()).isEqualTo(BandVerdict.POSITIVE);
    }
  }

  /** The same gel as somebody would photograph it. */
  @Nested
  class Photographs {
    private static final List<Integer> COUNTS = List.of(3, 0, 4, 2);

    @ParameterizedTest
    @ValueSource(doubles = {-4, -2, 3, 4.5})
    void read_turned_sameCounts(double degrees) {
      Picture gel = four().toPicture();
      double cos = Math.cos(Math.toRadians(degrees));
      double sin = Math.sin(Math.toRadians(degrees));
      Picture turned =
          framed(
              gel,
              (x, y) -> 450 + cos * (x - 550) + sin * (y - 450),
              (x, y) -> 350 - sin * (x - 550) + cos * (y - 450));
      assertThat(counts(read(turned))).isEqualTo(COUNTS);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-6e-5, 6e-5})
    void read_fromAside_sameCounts(double slant) {
      Picture gel = four().toPicture();
      Picture slanted =
          framed(
              gel,
              (x, y) -> 450 + (x - 550) / (1 + slant * (y - 450)),
              (x, y) -> 350 + (y - 450) / (1 + slant * (y - 450)));
      assertThat(counts(read(slanted))).isEqualTo(COUNTS);
    }

    @ParameterizedTest
    @CsvSource({"4, 20", "10, 28", "14, 32", "672, 692"})
    void read_labelsAndPenMarksOutsideTheLanes_changeNothing(int from, int to) {
      Picture gel = four().toPicture();
      Picture written =
          changed(
              gel,
              (x, y) -> {
                boolean isLabel =
                    y > from && y < to && x % 90 > 25 && x % 90 < 60 && x / 5 % 2 == y / 6 % 2;
                boolean isPen = x > 20 && x < 70 && Math.abs(y - 200 - 2 * (x - 20)) < 5;
                return isLabel || isPen ? 6_000 : gel.at(x, y);
              });
      assertThat(counts(read(written))).isEqualTo(COUNTS);
    }

    @Test
    void read_halfTheResolution_sameCounts() {
      assertThat(counts(read(four().toPicture().toReduced(2)))).isEqualTo(COUNTS);
    }

    /** A picture 200 wider and higher, whose surround is the same grey everywhere. */
    private static Picture framed(Picture gel, Place column, Place row) {
      int w = gel.width() + 200;
      int h = gel.height() + 200;
      char[] samples = new char[w * h];
      for (int y = 0; y < h; y++) {
        for (int x = 0; x < w; x++) {
          double u = column.of(x, y);
          double v = row.of(x, y);
          boolean isGel = u >= 0 && v >= 0 && u < gel.width() - 1 && v < gel.height() - 1;
          samples[y * w + x] = isGel ? between(gel, u, v) : (char) 52_000;
        }
      }
      return Picture.of(w, h, samples);
    }

    private static char between(Picture gel, double u, double v) {
      int x = (int) u;
      int y = (int) v;
      double a = u - x;
      double b = v - y;
      double upper = (1 - a) * gel.at(x, y) + a * gel.at(x + 1, y);
      double lower = (1 - a) * gel.at(x, y + 1) + a * gel.at(x + 1, y + 1);
      return (char) Math.round((1 - b) * upper + b * lower);
    }
  }

  /** A column or row as a function of column and row. */
  private interface Place {
    double of(int x, int y);
  }

  /** The picture with a sample for every column and row. */
  private static Picture changed(Picture gel, IntBinaryOperator sample) {
    char[] samples = new char[gel.width() * gel.height()];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (char) sample.applyAsInt(i % gel.width(), i / gel.width());
    }
    return Picture.of(gel.width(), gel.height(), samples);
  }
}
