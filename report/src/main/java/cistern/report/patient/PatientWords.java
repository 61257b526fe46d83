package cistern.report.patient;

import cistern.report.paper.Paper.Line;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;

/** Every sentence of the papers for the person in one language. */
public final class PatientWords {

  private final Locale locale;
  private final Properties sentences;

  private PatientWords(Locale locale, Properties sentences) {
    this.locale = locale;
    this.sentences = sentences;
  }

  /** English, the language of everything else that the program writes. */
  public static PatientWords english() {
    return find("en").orElseThrow();
  }

  /** A language by its code, such as {@code de}; nothing when it has no catalogue. */
  public static Optional<PatientWords> find(String language) {
    if (!language.matches("[A-Za-z]{2,8}")) {
      return Optional.empty();
    }
    Locale locale = Locale.of(language.toLowerCase(Locale.ROOT));
    String catalogue = "patient_" + locale.getLanguage() + ".properties";
    try (InputStream in = PatientWords.class.getResourceAsStream(catalogue)) {
      if (in == null) {
        return Optional.empty();
      }
      Properties read = new Properties();
      read.load(new InputStreamReader(in, StandardCharsets.UTF_8));
      boolean isEnglish = locale.getLanguage().equals("en");
      return Optional.of(new PatientWords(isEnglish ? Locale.UK : locale, read));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The language. */
  public Locale locale() {
    return locale;
  }

  /** The sentence of a key. */
  public String of(String key) {
    String sentence = sentences.getProperty(key);
    if (sentence == null) {
      throw new IllegalArgumentException(key + " has no sentence in " + locale);
    }
    return sentence;
  }

  /** The sentence of a key with its arguments; plural rules are those of the catalogue. */
  String of(String key, Object... arguments) {
    return new MessageFormat(of(key), locale).format(arguments);
  }

  /** The sentences key.1, key.2 and so on. */
  List<Line> list(String key) {
    List<Line> lines = new ArrayList<>();
    for (int i = 1; sentences.containsKey(key + "." + i); i++) {
      lines.add(Line.of(of(key + "." + i)));
    }
    return lines;
  }

  /** Every key of the catalogue. */
  Set<String> keys() {
    return sentences.stringPropertyNames();
  }
}
