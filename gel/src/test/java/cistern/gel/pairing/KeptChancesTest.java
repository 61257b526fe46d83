package cistern.gel.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.gel.lanes.LaneKind;
import cistern.gel.reading.KeptBands;
import cistern.gel.reading.KeptBands.Strike;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.LaneReading.Quality;
import cistern.gel.reading.PairReading;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Chances by hand, at a cut-off of two bands; lane 0 is the fluid's. */
class KeptChancesTest {

  private static final OptionalInt ALONE = OptionalInt.empty();
  private static final OptionalDouble PROGRAMS = OptionalDouble.empty();

  private static BandMark band(double probability, OptionalInt matched) {
    return new BandMark(10, 2, 0.3, matched, probability, "invented");
  }

  private static BandMark alone(double probability) {
    return band(probability, ALONE);
  }

  private static BandMark shared(double probability, int with) {
    return band(probability, OptionalInt.of(with));
  }

  private static LaneReading lane(int index, BandMark... bands) {
    return new LaneReading(
        index,
        LaneKind.UNKNOWN,
        OptionalInt.of(0),
        30,
        20,
        0,
        Quality.GOOD,
        List.of(),
        List.of(bands),
        false);
  }

  private static KeptBands pair(LaneReading csf, LaneReading serum, Strike... struck) {
    return new KeptBands(csf, serum, Set.of(struck));
  }

  /** As the reader would give it of bands that are certain to be alone or shared. */
  private static PairReading.Counts read(double both, double ladder, double... own) {
    CountDistribution d = CountDistribution.of(own);
    List<Double> patterns = PairAnswer.patterns(d.atLeast(2), both, ladder);
    return new PairReading.Counts(d.median(), 0, 0, d.chances(), d.atLeast(2), patterns);
  }

  private static void isCloseTo(List<Double> chances, Double... expected) {
    assertThat(chances).hasSize(expected.length);
    for (int i = 0; i < expected.length; i++) {
      assertThat(chances.get(i)).as("entry " + i).isCloseTo(expected[i], within(1e-9));
    }
  }

  @Test
  void chances_withoutAnEdit_areTheProgramsOwn() {
    KeptBands bands = pair(lane(0, alone(0.9), alone(0.6), shared(0.8, 0)), lane(1, shared(1, 2)));
    PairReading.Counts read = read(0.8, 0.008, 0.9, 0.6, 0.2);

    KeptChances kept = KeptChances.of(read, bands, bands, PROGRAMS, 2);

    isCloseTo(kept.csfOnly().chances(), read.csfOnlyDistribution().toArray(new Double[0]));
    isCloseTo(kept.patterns(), read.probabilityOfPattern().toArray(new Double[0]));
  }

  /** What was half seen and not listed, a chance of 0.2, stays. */
  @Test
  void bandStruck_hasTheChanceNoneAndTheOthersKeepTheirs() {
    LaneReading csf = lane(0, alone(0.9), alone(0.6));
    KeptBands before = pair(csf, lane(1));

    KeptChances kept =
        KeptChances.of(
            read(0, 0, 0.9, 0.6, 0.2), before, pair(csf, lane(1), new Strike(0, 0)), PROGRAMS, 2);

    isCloseTo(kept.csfOnly().chances(), 0.4 * 0.8, 0.6 * 0.8 + 0.4 * 0.2, 0.6 * 0.2);
    isCloseTo(kept.patterns(), 0.88, 0.12, 0.0, 0.0, 0.0);
  }

  @Test
  void bandDrawn_isCertain() {
    KeptBands before = pair(lane(0, alone(0.9)), lane(1));
    KeptBands now = pair(lane(0, alone(0.9), alone(1)), lane(1));

    KeptChances kept = KeptChances.of(read(0, 0, 0.9), before, now, PROGRAMS, 2);

    isCloseTo(kept.csfOnly().chances(), 0.0, 0.1, 0.9);
    isCloseTo(kept.patterns(), 0.1, 0.9, 0.0, 0.0, 0.0);
  }

  /** Two shared bands of chances 0.8 and 0.5: none with 0.2 times 0.5. */
  @Test
  void sharedBand_whoseCounterpartIsStruck_standsAloneAndTheOtherStaysShared() {
    LaneReading csf = lane(0, shared(0.8, 0), shared(0.5, 1));
    LaneReading serum = lane(1, shared(1, 0), shared(1, 1));

    KeptChances kept =
        KeptChances.of(
            read(0.9, 0.009), pair(csf, serum), pair(csf, serum, new Strike(1, 0)), PROGRAMS, 2);

    isCloseTo(kept.csfOnly().chances(), 0.2, 0.8);
    isCloseTo(kept.patterns(), 0.995 * 0.5, 0.0, 0.0, 0.995 * 0.5, 0.005);
  }

  /** The person says that the fluid's only band has the drawn one for its counterpart. */
  @Test
  void bandDrawnAsACounterpart_makesItsBandShared() {
    KeptBands before = pair(lane(0, alone(0.9)), lane(1));
    KeptBands now = pair(lane(0, shared(0.9, 0)), lane(1, shared(1, 0)));

    KeptChances kept = KeptChances.of(read(0, 0, 0.9), before, now, PROGRAMS, 2);

    isCloseTo(kept.csfOnly().chances(), 1.0);
    isCloseTo(kept.patterns(), 0.1, 0.0, 0.0, 0.9, 0.0);
  }

  @Test
  void ladder_isThePersonsWhereTheyJudgeOtherwise() {
    LaneReading csf = lane(0, shared(0.8, 0));
    KeptBands bands = pair(csf, lane(1, shared(1, 0)));
    PairReading.Counts ladder = read(0.8, 0.97);

    assertThat(KeptChances.of(ladder, bands, bands, PROGRAMS, 2).patterns().getLast())
        .isEqualTo(0.97);
    isCloseTo(
        KeptChances.of(ladder, bands, bands, OptionalDouble.of(0), 2).patterns(),
        0.2,
        0.0,
        0.0,
        0.8,
        0.0);
    isCloseTo(
        KeptChances.of(read(0.8, 0.008), bands, bands, OptionalDouble.of(1), 2).patterns(),
        0.0,
        0.0,
        0.0,
        0.0,
        1.0);
  }

  @Test
  void chances_ofAnyStrikes_areADistribution() {
    LaneReading csf = lane(0, alone(0.99), shared(0.6, 0), alone(0.55));
    LaneReading serum = lane(1, shared(0.7, 1), alone(0.9));
    List<Strike> all =
        List.of(
            new Strike(0, 0),
            new Strike(0, 1),
            new Strike(0, 2),
            new Strike(1, 0),
            new Strike(1, 1));
    for (int some = 0; some < 1 << all.size(); some++) {
      int these = some;
      Strike[] struck =
          all.stream().filter(s -> (these >> all.indexOf(s) & 1) == 1).toArray(Strike[]::new);
      List<Double> patterns =
          KeptChances.of(
                  read(0.3, 0.003, 0.7, 0.4),
                  pair(csf, serum),
                  pair(csf, serum, struck),
                  PROGRAMS,
                  2)
              .patterns();
      assertThat(patterns).as(Arrays.toString(struck)).allMatch(p -> p >= 0 && p <= 1);
      assertThat(patterns.stream().mapToDouble(p -> p).sum()).isCloseTo(1, within(1e-9));
    }
  }
}
