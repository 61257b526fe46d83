package cistern.gel.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.gel.GelFacts;
import cistern.gel.bands.Band;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class CounterpartsTest {
  private static final Alignment STILL = new Alignment(0, 0, 0, 1, 0);
  private static final Counterparts COUNTERPARTS = Counterparts.of(GelFacts.standard(), 1.5, 1000);

  private static List<Band> bands(double... rows) {
    return Arrays.stream(rows)
        .mapToObj(y -> new Band(y, 0.3, 3, 20, 1, 0, 1, 10, 0, 0.99))
        .toList();
  }

  @Test
  void logLikelihood_sameBands_speaksForOnePerson() {
    assertThat(COUNTERPARTS.logLikelihood(bands(100, 240, 400), bands(101, 240, 399), STILL))
        .isGreaterThan(6);
  }

  @Test
  void logLikelihood_otherBands_speaksForTwo() {
    assertThat(COUNTERPARTS.logLikelihood(bands(100, 240, 400), bands(180, 320, 600), STILL))
        .isLessThan(-4);
  }

  @Test
  void logLikelihood_bandsThatMissNarrowly_speakLessForTwo() {
    double narrowly = COUNTERPARTS.logLikelihood(bands(100), bands(113), STILL);
    double widely = COUNTERPARTS.logLikelihood(bands(100), bands(300), STILL);
    assertThat(narrowly).isGreaterThan(widely);
  }

  @Test
  void logLikelihood_noSerumBands_saysNothing() {
    assertThat(COUNTERPARTS.logLikelihood(bands(100, 240), List.of(), STILL))
        .isCloseTo(0, within(1e-12));
  }

  @Test
  void probabilityOfOther_noEvidence_isThePrior() {
    // Project rule: one serum in twenty is another person's.
    assertThat(new SerumIdentity(0.05).probabilityOfOther(0)).isCloseTo(0.05, within(1e-12));
  }
}
