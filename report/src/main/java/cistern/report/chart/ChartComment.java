package cistern.report.chart;

import cistern.interpretation.Interpretation;
import cistern.report.wording.PrintedTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One paragraph for the chart, in the order in which a specialist comments: sample, cells, protein,
 * barrier, glucose and lactate, intrathecal immunoglobulins, bands, κ, specific antibodies,
 * summary, criteria, what is open, what limits it. Plain Latin-1 text without line breaks, at most
 * {@value #MOST_WORDS} words; from six values on at least {@value #LEAST_WORDS}.
 */
public final class ChartComment {

  static final int MOST_WORDS = 140;
  static final int LEAST_WORDS = 60;

  private static final Pattern SPACES = Pattern.compile("\\s+");

  /** What charting systems lose, and what stands for it. */
  private static final List<Map.Entry<String, String>> PLAIN =
      Stream.of(
              Map.entry("κ index", "kappa index"),
              Map.entry("κ", "kappa"),
              Map.entry("λ", "lambda"),
              Map.entry("× 10⁻³", "x 10^-3"),
              Map.entry("⁻³", "^-3"),
              Map.entry("10⁶", "10^6"),
              Map.entry("10⁹", "10^9"),
              Map.entry("10¹²", "10^12"),
              Map.entry("10³", "10^3"),
              Map.entry("×", "x"),
              Map.entry("≥", ">="),
              Map.entry("≤", "<="),
              Map.entry("∞", "infinite"),
              Map.entry("−", "-"),
              Map.entry("–", "-"),
              Map.entry("—", "-"),
              Map.entry("’", "'"),
              Map.entry("‘", "'"),
              Map.entry("“", "\""),
              Map.entry("”", "\""),
              Map.entry("…", "..."),
              Map.entry("₂", "2"),
              Map.entry("μ", "µ"))
          .sorted(Comparator.comparingInt(e -> -e.getKey().length()))
          .toList();

  private ChartComment() {}

  /**
   * A sentence of the comment.
   *
   * @param rank how readily it is left out when the words do not suffice; 0 never
   * @param text ends with a full stop
   */
  record Sentence(int rank, String text) {

    /** Of a plain text: its spaces stand alone, between words. */
    int words() {
      int words = 1;
      for (int space = text.indexOf(' '); space >= 0; space = text.indexOf(' ', space + 1)) {
        words++;
      }
      return words;
    }
  }

  /** The comment on an interpretation, with each day as it was given. */
  public static String of(Interpretation interpretation) {
    return of(interpretation, PrintedTime.AS_GIVEN);
  }

  /**
   * The comment on an interpretation.
   *
   * @param times how days are printed
   */
  public static String of(Interpretation interpretation, PrintedTime times) {
    List<Sentence> said = new ArrayList<>();
    for (Sentence sentence : new ChartSentences(interpretation, times).all()) {
      String text = plain(sentence.text());
      if (!text.isEmpty()) {
        said.add(new Sentence(sentence.rank(), text));
      }
    }
    shorten(said);
    for (String more : ChartSentences.MORE) {
      if (words(said) < LEAST_WORDS) {
        said.add(new Sentence(0, more));
      }
    }
    return said.stream().map(Sentence::text).collect(Collectors.joining(" "));
  }

  /** Leaves out what ranks highest until the words suffice. */
  private static void shorten(List<Sentence> said) {
    while (words(said) > MOST_WORDS) {
      Sentence last = said.stream().max(Comparator.comparingInt(Sentence::rank)).orElseThrow();
      if (last.rank() == 0) {
        cut(said);
        return;
      }
      said.remove(last);
    }
  }

  /** Where even what must stand is too long, its longest sentence ends early and says so. */
  private static void cut(List<Sentence> said) {
    int over = words(said) - MOST_WORDS;
    Sentence longest = said.stream().max(Comparator.comparingInt(Sentence::words)).orElseThrow();
    List<String> words = List.of(SPACES.split(longest.text(), -1));
    int kept = Math.max(1, words.size() - over - 1);
    said.set(
        said.indexOf(longest), new Sentence(0, String.join(" ", words.subList(0, kept)) + " ..."));
  }

  private static int words(List<Sentence> said) {
    return said.stream().mapToInt(Sentence::words).sum();
  }

  /** The text in Latin-1 on one line; a sign that has no plain form is left out. */
  static String plain(String text) {
    String plain = text;
    for (Map.Entry<String, String> sign : PLAIN) {
      plain = plain.replace(sign.getKey(), sign.getValue());
    }
    StringBuilder latin = new StringBuilder(plain.length());
    for (int i = 0; i < plain.length(); i++) {
      char sign = plain.charAt(i);
      boolean isSpace = sign == ' ' || sign == '\n' || sign == '\u00A0';
      if (isSpace && !latin.isEmpty() && latin.charAt(latin.length() - 1) != ' ') {
        latin.append(' ');
      } else if ((sign > ' ' && sign < 0x7F) || (sign > 0xA0 && sign <= 0xFF)) {
        latin.append(sign);
      }
    }
    return latin.toString().strip();
  }
}
