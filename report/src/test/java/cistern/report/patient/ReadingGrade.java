package cistern.report.patient;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * How hard a text is to read: the grade of Flesch and Kincaid, 0.39 · words per sentence + 11.8 ·
 * syllables per word − 15.59 (Kincaid 1975, Research Branch Report 8-75; numbers from memory).
 * Grade 6 to 7 is about the age of twelve. Syllables are counted as runs of vowels without a silent
 * e, the usual approximation; common practice, no source.
 */
public final class ReadingGrade {

  private static final Pattern SENTENCES = Pattern.compile("[.!?:]+\\s*");
  private static final Pattern WORDS = Pattern.compile("[^\\p{L}’']+");
  private static final Pattern VOWELS = Pattern.compile("[aeiouy]+");

  /** A last e that is not sounded: like, looked, times; but not little, tested, causes. */
  private static final Pattern SILENT = Pattern.compile("([^l]e|[^td]ed|[^sxzgch]es)$");

  private ReadingGrade() {}

  /** The grade of some paragraphs. */
  public static double of(List<String> paragraphs) {
    List<String> sentences =
        paragraphs.stream()
            .flatMap(p -> Arrays.stream(SENTENCES.split(p, -1)))
            .filter(s -> !s.isBlank())
            .toList();
    List<String> words =
        sentences.stream()
            .flatMap(s -> Arrays.stream(WORDS.split(s, -1)))
            .filter(w -> !w.isBlank())
            .toList();
    double syllables = words.stream().mapToInt(ReadingGrade::syllables).sum();
    return 0.39 * words.size() / sentences.size() + 11.8 * syllables / words.size() - 15.59;
  }

  /** At least one, for every word. */
  static int syllables(String word) {
    String lower = word.toLowerCase(Locale.ROOT);
    int count = (int) VOWELS.matcher(lower).results().count();
    boolean isSilent = SILENT.matcher(lower).find();
    return Math.max(1, count - (isSilent ? 1 : 0));
  }
}
