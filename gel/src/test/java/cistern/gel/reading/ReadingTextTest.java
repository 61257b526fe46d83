package cistern.gel.reading;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.reading.GelReading.PictureSeen;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a person reads of a reading; the names of the patterns are those of the consensus. */
class ReadingTextTest {

  private static String text(BandPattern pattern, double chance) {
    PairReading pair =
        new PairReading(
            0,
            OptionalInt.of(0),
            OptionalInt.of(1),
            Optional.of(
                new PairReading.Counts(
                    2, 1, 0, List.of(1 - chance, 0.0, chance), chance, List.of())),
            Optional.of(pattern),
            BandVerdict.UNDETERMINED,
            List.of(),
            List.of());
    PictureSeen seen = new PictureSeen("g.png", 90, 70, Polarity.DARK_ON_LIGHT, Posture.UPRIGHT);
    return ReadingText.toText(List.of(new GelReading(seen, List.of(), List.of(pair), List.of())));
  }

  @ParameterizedTest
  @CsvSource({
    "NORMAL, 0.002, 'pattern 1, CSF-only bands not demonstrated', fewer than 1 chances",
    "LOCAL, 0.998, 'pattern 2, bands only in the CSF', more than 99 chances",
    "LOCAL_AND_SYSTEMIC, 0.8, 'pattern 3, shared bands and more in the CSF', 80 chances",
    "SYSTEMIC, 0.2, 'pattern 4, the same bands in both', 20 chances",
    "LADDER, 0.5, 'pattern 5, a regular ladder in both', 50 chances"
  })
  void toText_eachPattern_isNamedAndNothingIsCertain(
      BandPattern pattern, double chance, String words, String chances) {
    assertThat(text(pattern, chance)).contains(words, chances, "proposal until a person");
  }
}
