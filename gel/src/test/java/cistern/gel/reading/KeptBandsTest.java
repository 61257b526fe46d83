package cistern.gel.reading;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandCounts;
import cistern.bands.BandVerdict;
import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.lanes.LaneKind;
import cistern.gel.reading.KeptBands.Strike;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.LaneReading.Quality;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Counts by hand over two lanes: C0 alone, C1 with S0, C2 with S2; S1 alone. */
class KeptBandsTest {

  private static final OptionalInt ALONE = OptionalInt.empty();
  private static final LaneReading CSF =
      lane(4, LaneKind.CSF, ALONE, OptionalInt.of(0), OptionalInt.of(2));
  private static final LaneReading SERUM =
      lane(5, LaneKind.SERUM, OptionalInt.of(1), ALONE, OptionalInt.of(2));

  private static LaneReading lane(int index, LaneKind kind, OptionalInt... matched) {
    List<BandMark> bands =
        List.of(matched).stream().map(m -> new BandMark(10, 2, 0.3, m, 0.9, "invented")).toList();
    return new LaneReading(
        index, kind, OptionalInt.of(2), 30, 20, 0, Quality.GOOD, List.of(), bands, false);
  }

  private static BandCounts counts(Strike... struck) {
    return new KeptBands(CSF, SERUM, Set.of(struck)).counts();
  }

  @Test
  void counts_withNothingStruck_areThoseOfTheLists() {
    assertThat(counts()).isEqualTo(BandCounts.of(1, 2, 1));
  }

  @Test
  void counts_withABandStruck_areWithoutIt() {
    assertThat(counts(new Strike(4, 0))).isEqualTo(BandCounts.of(0, 2, 1));
    assertThat(counts(new Strike(5, 1))).isEqualTo(BandCounts.of(1, 2, 0));
  }

  @Test
  void counts_withACounterpartStruck_leaveTheOtherAlone() {
    assertThat(counts(new Strike(5, 0))).isEqualTo(BandCounts.of(2, 1, 1));
    assertThat(counts(new Strike(4, 1))).isEqualTo(BandCounts.of(1, 1, 2));
    assertThat(counts(new Strike(4, 2), new Strike(5, 2))).isEqualTo(BandCounts.of(1, 1, 1));
  }

  @Test
  void of_aPairWithoutBothLanes_isEmpty() {
    assertThat(KeptBands.of(reading(OptionalInt.of(0)), 2, Set.of()))
        .hasValueSatisfying(b -> assertThat(b.serum().kind()).isEqualTo(LaneKind.SERUM));
    assertThat(KeptBands.of(reading(ALONE), 2, Set.of())).isEmpty();
    assertThat(KeptBands.of(reading(OptionalInt.of(0)), 1, Set.of())).isEmpty();
  }

  private static GelReading reading(OptionalInt csfLane) {
    PairReading pair =
        new PairReading(
            2,
            csfLane,
            OptionalInt.of(1),
            Optional.empty(),
            Optional.empty(),
            BandVerdict.UNDETERMINED,
            List.of("a lane is missing"),
            List.of());
    return new GelReading(
        new GelReading.PictureSeen("x", 100, 100, Polarity.DARK_ON_LIGHT, Posture.UPRIGHT),
        List.of(CSF, SERUM),
        List.of(pair),
        List.of());
  }
}
