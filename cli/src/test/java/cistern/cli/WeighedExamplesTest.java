package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.interpretation.Interpreter;
import cistern.redflag.RedFlag;
import cistern.weighing.NextItem;
import cistern.weighing.Weighed;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The invented work-ups of {@code examples/}, each with the verdicts of both editions, the red
 * flags and the first two next steps that a reviewer expects; reviewed by hand against the row
 * tables.
 */
class WeighedExamplesTest {

  private static final Facts FACTS = Facts.standard();
  private static final WorkupFile FILE = WorkupFile.of(FACTS);
  private static final Interpreter INTERPRETER = Interpreter.of(FACTS);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          typical-ms | met 17-5, met 24-B | - | borrelia-antibody-index
          barrier-leak | undetermined, undetermined | albumin-quotient-high no-csf-only-bands | history aqp4-igg
          bloody-tap | undetermined, undetermined | - | history borrelia-antibody-index
          serum-days-later | undetermined, undetermined | - | serum-redraw aqp4-igg
          alike-bands | undetermined, undetermined | bands-alike no-csf-only-bands | history kappa-flc
          monoclonal-ladder | undetermined, undetermined | monoclonal-ladder | history repeat-focusing
          kappa-under-limit | undetermined, not-met | no-csf-only-bands | aqp4-igg mog-igg
          low-serum-igg | undetermined, undetermined | - | history repeat-focusing
          high-index-without-bands | undetermined, undetermined | no-csf-only-bands | borrelia-antibody-index aqp4-igg
          infection-like | undetermined, undetermined | leukocytes-beyond-ms glucose-ratio-low lactate-high protein-high albumin-quotient-high neutrophils-prominent | history bands
          """)
  void weigh_anExample_saysWhatAReviewerExpects(
      String example, String verdicts, String flags, String next) {
    Understood understood = (Understood) FILE.read(Path.of("..", "examples", example + ".json"));
    Weighed weighed = INTERPRETER.interpret(understood.workup()).weighed();

    assertThat(
            weighed.criteria().stream()
                .map(r -> (r.verdict().word() + " " + String.join(" ", r.rows())).strip())
                .collect(Collectors.joining(", ")))
        .isEqualTo(verdicts);
    assertThat(
            weighed.flags().isEmpty()
                ? "-"
                : weighed.flags().stream().map(RedFlag::code).collect(Collectors.joining(" ")))
        .isEqualTo(flags);
    assertThat(
            weighed.next().stream().limit(2).map(NextItem::item).collect(Collectors.joining(" ")))
        .isEqualTo(next);
  }
}
