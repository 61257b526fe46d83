package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.gel.synthetic.Level;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The study of the reader: gels of seeds that it was not tuned on, their lanes named in order. */
@Tag("long")
class GelStudyTest {
  private static final int GELS = 330;
  private static final long FIRST_SEED = 20_000;
  private static final String SOURCE =
      "our own generator; mix 22 % none, 10 % one band, 26 % local, 12 % mixed, 10 % systemic,"
          + " 5 % ladder, 3 % near miss, 3 % serum-only, 5 % mispaired, 4 % unreadable";

  @ParameterizedTest
  @EnumSource(Level.class)
  void read_manyInventedGels_scoreIsReported(Level level) {
    Score score = Score.of(new GelReader(GelFacts.standard()), level, FIRST_SEED, GELS);
    row(level, "shares right").toTable(score.toText());
    row(level, "patterns, true and read").toTable(score.confusion().toPatterns());
    row(level, "counts of CSF-only bands").toTable(score.confusion().toCounts());
    row(level, "reliability of the chance of two bands").toTable(score.confusion().toReliability());
    assertThat(score.pairsRead()).isGreaterThanOrEqualTo(1_500);
    assertThat(score.yes()).as(score.toText()).isGreaterThan(leastYes(level));
    assertThat(score.found()).as(score.toText()).isGreaterThan(leastFound(level));
  }

  private static OutsideCheck row(Level level, String what) {
    return OutsideCheck.of("Invented gels, " + level + ": " + what, SOURCE, "reported as it is");
  }

  /** The aims for the yes or no, a project rule. */
  private static double leastYes(Level level) {
    return switch (level) {
      case EASY -> 0.998;
      case MEDIUM -> 0.99;
      case HARD -> 0.965;
    };
  }

  /** The aims for the lanes found unaided, a project rule. */
  private static double leastFound(Level level) {
    return switch (level) {
      case EASY -> 0.998;
      case MEDIUM -> 0.99;
      case HARD -> 0.95;
    };
  }
}
