package cistern.puncture.drug;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text in the form in which names of drugs are compared: small letters without accents, cut into
 * words and numbers.
 *
 * @param plain small letters without accents
 * @param words in order
 */
record DrugText(String plain, List<Word> words) {

  /** Joined words this long may have been written apart or together. */
  private static final int LONG = 6;

  private static final Pattern MARKS = Pattern.compile("\\p{M}");

  /** What holds two words together. */
  private static final Pattern HELD = Pattern.compile("[-‐‑–.'’]?");

  private static final Pattern WORD = Pattern.compile("\\p{L}+|\\d+(?:[.,]\\d+)?");

  /** Letters that two spellings of one international name exchange, applied in order. */
  private static final String[][] SPELLINGS = {
    {"ph", "f"},
    {"th", "t"},
    {"ck", "k"},
    {"qu", "k"},
    {"x", "ks"},
    {"c", "k"},
    {"y", "i"},
    {"w", "v"},
    {"ou", "u"},
    {"ae", "e"},
    {"oe", "e"}
  };

  private static final Pattern DOUBLED = Pattern.compile("(.)\\1");

  private static final Pattern ENDING = Pattern.compile("(?:um|as|us|is|[aeou])$");

  /**
   * A word or a number.
   *
   * @param text small letters or digits
   * @param from where it begins
   * @param to where it ends, itself left out
   * @param isApart whether more than a hyphen or a point stands before it
   */
  record Word(String text, int from, int to, boolean isApart) {

    boolean isNumber() {
      return Character.isDigit(text.charAt(0));
    }
  }

  /** Copies the words. */
  DrugText {
    words = List.copyOf(words);
  }

  static DrugText of(String typed) {
    String plain = plain(typed);
    List<Word> words = new ArrayList<>();
    Matcher matcher = WORD.matcher(plain);
    int end = 0;
    while (matcher.find()) {
      boolean isApart = !HELD.matcher(plain.substring(end, matcher.start())).matches();
      words.add(new Word(matcher.group(), matcher.start(), matcher.end(), isApart));
      end = matcher.end();
    }
    return new DrugText(plain, words);
  }

  private static String plain(String typed) {
    return MARKS
        .matcher(Normalizer.normalize(typed, Normalizer.Form.NFKD))
        .replaceAll("")
        .toLowerCase(Locale.ROOT)
        .replace("ß", "ss")
        .replace("ø", "o")
        .replace("ł", "l")
        .replace("đ", "d")
        .replace("ı", "i")
        .replace("æ", "ae")
        .replace("œ", "oe");
  }

  /** Some words with single spaces between. */
  String spaced(int from, int count) {
    return String.join(" ", words.subList(from, from + count).stream().map(Word::text).toList());
  }

  /** Some words written together. */
  String joined(int from, int count) {
    return String.join("", words.subList(from, from + count).stream().map(Word::text).toList());
  }

  /** Whether some words may stand for one written together: a long one, or held by hyphens. */
  boolean isOneName(int from, int count) {
    return joined(from, count).length() >= LONG
        || words.subList(from + 1, from + count).stream().noneMatch(Word::isApart);
  }

  /** A long name as every language spells it alike; a short one stays as it is. */
  static String spelled(String joined) {
    if (joined.length() < LONG || !joined.chars().allMatch(c -> c < 128 && Character.isLetter(c))) {
      return joined;
    }
    String text = joined;
    for (String[] spelling : SPELLINGS) {
      text = text.replace(spelling[0], spelling[1]);
    }
    text = DOUBLED.matcher(text).replaceAll("$1");
    String stem = ENDING.matcher(text).replaceFirst("");
    return stem.length() >= LONG - 1 ? stem : text;
  }
}
