package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.gel.synthetic.Level;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The study of the reader: gels of seeds that it was not tuned on. */
@Tag("long")
class GelStudyTest {
  private static final int GELS = 330;
  private static final long FIRST_SEED = 20_000;

  @ParameterizedTest
  @EnumSource(Level.class)
  void read_manyInventedGels_scoreIsReported(Level level) {
    Score score = Score.of(new GelReader(GelFacts.standard()), level, FIRST_SEED, GELS);
    OutsideCheck.of(
            "Gel readings against the truth of invented gels, level " + level,
            "our own generator; mix 22 % none, 10 % one band, 26 % local, 12 % mixed, 10 % systemic,"
                + " 5 % ladder, 3 % near miss, 3 % serum-only, 5 % mispaired, 4 % unreadable",
            "none: reported as it is")
        .toTable(score.toText());
    assertThat(score.pairsRead()).isGreaterThanOrEqualTo(1_500);
    assertThat(score.yes()).as(score.toText()).isGreaterThan(0.97);
  }
}
