package cistern.report.patient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The catalogues of the papers for the person: whole, plain, and read at about twelve. */
class PatientWordsTest {

  private static final Pattern NUMBERED = Pattern.compile("(.*)\\.[0-9]+");

  private static PatientWords words(String language) {
    return PatientWords.find(language).orElseThrow();
  }

  /** Sentences for reading, without labels of drawings and the foot. */
  private static List<String> prose(String language) {
    PatientWords words = words(language);
    return words.keys().stream()
        .filter(k -> k.startsWith("result.") || k.startsWith("plan.") || k.startsWith("today."))
        .filter(k -> !k.equals("result.waiting"))
        .sorted()
        .map(words::of)
        .toList();
  }

  private static Set<String> families(String language) {
    return words(language).keys().stream()
        .map(k -> NUMBERED.matcher(k).replaceAll("$1"))
        .collect(Collectors.toSet());
  }

  @Test
  void find_unknownLanguage_hasNoWords() {
    assertThat(PatientWords.find("xx")).isEmpty();
    assertThat(PatientWords.find("../en")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"de"})
  void catalogue_anyLanguage_saysWhatTheEnglishOneSays(String language) {
    assertThat(families(language)).isEqualTo(families("en"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "de"})
  void catalogue_anyLanguage_hasNoNumberAndNeverPromises(String language) {
    assertThat(String.join(" ", prose(language)).toLowerCase(Locale.ROOT))
        .doesNotContainPattern("[0-9%]")
        .doesNotContain("painless", "schmerzlos", "ungefährlich", "probab", "wahrscheinlich");
  }

  @Test
  void waiting_oneOrMore_followsThePluralOfTheLanguage() {
    assertThat(words("en").of("result.waiting", 1)).startsWith("The result of one test is");
    assertThat(words("en").of("result.waiting", 3)).startsWith("The results of some tests are");
    assertThat(words("de").of("result.waiting", 1)).startsWith("Ein Test ist");
    assertThat(words("de").of("result.waiting", 2)).startsWith("Ein Teil der Tests ist");
  }

  /** Grade 6 of Flesch and Kincaid is about the age of twelve. */
  @Test
  void english_all_isReadAtTheAgeOfTwelve() {
    assertThat(ReadingGrade.of(prose("en"))).isLessThan(6);
  }

  /** School year 6 of the first Vienna formula is about the age of twelve. */
  @Test
  void german_all_isReadAtTheAgeOfTwelve() {
    assertThat(ViennaFormula.of(prose("de"))).isLessThan(6);
  }

  @Nested
  class Published {

    /** "Die Katze sitzt auf der Matte.": 6 words, none long, none of three syllables, 4 of one. */
    @Test
    void viennaFormula_ofAShortSentence_isAsCountedByHand() {
      assertThat(ViennaFormula.of(List.of("Die Katze sitzt auf der Matte.")))
          .isCloseTo(0.1672 * 6 - 0.0327 * 100 * 4 / 6 - 0.875, within(1e-9));
    }
  }

  /**
   * How hard a German text is to read, in years of school: the first Vienna formula, 0.1935 · share
   * of words of three syllables or more + 0.1672 · words per sentence + 0.1297 · share of words of
   * more than six letters − 0.0327 · share of words of one syllable − 0.875, shares in per cent
   * (Bamberger and Vanecek 1984; numbers from memory). Syllables are counted as runs of vowels.
   */
  private static final class ViennaFormula {

    private static final Pattern VOWELS = Pattern.compile("[aeiouyäöü]+");

    static double of(List<String> paragraphs) {
      List<String> sentences =
          paragraphs.stream()
              .flatMap(p -> Arrays.stream(p.split("[.!?:]+\\s*", -1)))
              .filter(s -> !s.isBlank())
              .toList();
      List<String> words =
          sentences.stream()
              .flatMap(s -> Stream.of(s.split("[^\\p{L}]+", -1)))
              .filter(w -> !w.isBlank())
              .toList();
      return 0.1935 * percent(words, w -> syllables(w) >= 3)
          + 0.1672 * words.size() / sentences.size()
          + 0.1297 * percent(words, w -> w.length() > 6)
          - 0.0327 * percent(words, w -> syllables(w) == 1)
          - 0.875;
    }

    private static double percent(List<String> words, java.util.function.Predicate<String> kind) {
      return 100.0 * words.stream().filter(kind).count() / words.size();
    }

    private static long syllables(String word) {
      return Math.max(1, VOWELS.matcher(word.toLowerCase(Locale.ROOT)).results().count());
    }
  }
}
