package cistern.exchange.deidentified;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The fields of a work-up that may be kept, and under which rule; every other field is left out. A
 * table, so that what leaves the site can be read in one place.
 */
final class KeptFields {

  private static final String TABLE = "kept.tsv";

  private final Map<String, Map<String, Field>> byPlace = new HashMap<>();

  private KeptFields() {}

  /** What makes a field safe. */
  enum Rule {
    /** Known, and never kept. */
    OUT,
    TRUTH,
    NUMBER,
    /** Yes, no or unknown. */
    ANSWER,
    /** Each of its words stands in the list. */
    WORD,
    /** As {@link #WORD}; any other place of puncture becomes {@code other}. */
    SITE,
    TIME,
    UNIT,
    /** Numbers with a sign or a hyphen. */
    LIMIT,
    TITRE,
    ANALYTE,
    /** Replaced by the international name. */
    DRUG,
    AGE_YEARS,
    AGE_DAYS,
    BIRTH,
    PERSON,
    WORKUP,
    /** A list that would say something untrue without one of its entries. */
    WHOLE
  }

  /**
   * One field.
   *
   * @param rule what makes it safe
   * @param isNeeded whether the entry around it says something untrue without it
   * @param words that may stand in it
   */
  record Field(Rule rule, boolean isNeeded, Set<String> words) {}

  /** Reads the table beside this class. */
  static KeptFields read() {
    KeptFields kept = new KeptFields();
    try (InputStream in = KeptFields.class.getResourceAsStream(TABLE)) {
      if (in == null) {
        throw new IllegalStateException("no table " + TABLE);
      }
      new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
          .lines()
          .skip(1)
          .map(line -> line.split("\t", -1))
          .forEach(kept::add);
      return kept;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void add(String[] row) {
    Rule rule = Rule.valueOf(row[1].toUpperCase(Locale.ROOT).replace('-', '_'));
    Set<String> words =
        Arrays.stream(row[3].split(" ", -1)).filter(w -> !w.isEmpty()).collect(Collectors.toSet());
    for (String name : row[2].split(" ", -1)) {
      boolean isNeeded = name.startsWith("!");
      byPlace
          .computeIfAbsent(row[0], place -> new HashMap<>())
          .put(isNeeded ? name.substring(1) : name, new Field(rule, isNeeded, words));
    }
  }

  /** The field of a name at a place, if it is known. */
  Optional<Field> find(String place, String name) {
    return Optional.ofNullable(byPlace.getOrDefault(place, Map.of()).get(name));
  }

  /** Whether anything is known at a place or below it. */
  boolean isPlace(String place) {
    return byPlace.keySet().stream()
        .anyMatch(p -> p.equals(place) || p.startsWith(place + ".") || p.startsWith(place + "["));
  }
}
