package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The invented work-ups of {@code examples/}, each with the problems, conflicts and statements that
 * a reviewer expects; arithmetic of the published formulas, reviewed by hand.
 */
class ExamplesTest {

  private static final Pattern CODE = Pattern.compile("\"code\" : \"([a-z-]+)\"");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "typical-ms|-|-|synthesis-demonstrated barrier-holds criteria",
        "barrier-leak|-|-|synthesis-not-demonstrated barrier-leaks near-limit"
            + " repeatability add-kappa",
        "bloody-tap|blood-contaminated|-|synthesis-demonstrated yellow-or-bloody"
            + " blood-in-sample barrier-undetermined",
        "serum-days-later|draws-far-apart|-|synthesis-undetermined pair-defect"
            + " barrier-undetermined redraw-pair",
        "alike-bands|-|-|synthesis-not-demonstrated barrier-holds bands-alike"
            + " repeatability add-kappa",
        "monoclonal-ladder|-|-|synthesis-undetermined monoclonal fifty-or-vascular barrier-holds"
            + " monoclonal-ladder repeatability add-kappa immunofixation",
        "kappa-under-limit|-|-|synthesis-not-demonstrated no-sign-of-synthesis barrier-holds"
            + " repeatability",
        "low-serum-igg|serum-igg-low|age-rules-disagree index-against-hyperbola|"
            + "synthesis-equivocal single-band barrier-leaks near-limit near-limit"
            + " near-limit near-limit repeatability repeat-focusing add-kappa",
        "high-index-without-bands|-|bands-against-fraction|synthesis-suggested weakest-link"
            + " barrier-holds index-without-bands near-limit near-limit repeatability"
            + " repeat-focusing add-kappa",
        "infection-like|-|rate-against-fraction|bacterial-pattern lactate-and-cells"
            + " tuberculous-pattern urgent-act infection-open waiting barrier-leaks"
      })
  void interpret_anExample_saysWhatAReviewerExpects(
      String example, String problems, String conflicts, String statements) {
    Run run = Run.of("interpret", "--format", "json", "../examples/" + example + ".json");

    assertThat(run.code()).isZero();
    assertThat(codes(run.out(), "problems")).isEqualTo(words(problems));
    assertThat(codes(run.out(), "conflicts")).isEqualTo(words(conflicts));
    assertThat(codes(run.out(), "statements")).containsAll(words(statements));
    assertThat(codes(run.out(), "cautions")).contains("invented-data", "research-and-education");
  }

  private static List<String> words(String words) {
    return words.equals("-") ? List.of() : List.of(words.split(" ", -1));
  }

  /** The codes of one list of the interpretation, in order. */
  private static List<String> codes(String json, String list) {
    int start = json.indexOf("\n  \"" + list + "\" : [");
    int end = json.indexOf("\n  \"", start + 1);
    Matcher matcher = CODE.matcher(json.substring(start, end < 0 ? json.length() : end));
    List<String> codes = new ArrayList<>();
    while (matcher.find()) {
      codes.add(matcher.group(1));
    }
    return codes;
  }
}
