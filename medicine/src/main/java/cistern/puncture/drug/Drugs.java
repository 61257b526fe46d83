package cistern.puncture.drug;

import cistern.fact.Facts;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The drugs of the table, found by any name that people type: capitals, accents, hyphens and the
 * spelling of another language do not matter, the longest name counts. A name that is not in the
 * table stays unknown, however near it comes.
 */
public final class Drugs {

  private static final String ROW = "drug.";
  private static final String NAMES = ".names";
  private static final int LONGEST = 7;
  private static final int SHORTEST_WORD = 3;
  private static final int ENDING_FROM = 6;

  /** The scripts of East Asia begin here (Unicode, CJK Radicals). */
  private static final int UNSPACED_FROM = 0x2E80;

  private static final Pattern BETWEEN =
      Pattern.compile(
          ",(?!\\d)|(?<!\\d),|[;+&\\n•|、，;]|\\s(?:and|und|et|y|plus|oraz|with|mit|og|och|sowie)\\s",
          Pattern.CASE_INSENSITIVE);

  private final Map<String, DrugEntry> entries = new LinkedHashMap<>();
  private final Map<String, List<DrugEntry>> bySpaced = new HashMap<>();
  private final Map<String, List<DrugEntry>> byJoined = new HashMap<>();
  private final Map<String, List<DrugEntry>> bySpelling = new HashMap<>();
  private final Map<String, String> printed = new LinkedHashMap<>();
  private final Set<String> ordinary;
  private final List<String> endings;
  private final DoseText doses;

  private Drugs(Facts facts) {
    doses = new DoseText(facts);
    ordinary = DoseText.names(facts, "form");
    endings = List.copyOf(DoseText.names(facts, "ending"));
    List<String> rows =
        facts.keys(ROW).stream()
            .filter(key -> key.endsWith(NAMES))
            .map(key -> key.substring(0, key.length() - NAMES.length()))
            .toList();
    rows.forEach(row -> entries.put(row.substring(ROW.length()), entry(facts, row)));
    rows.forEach(row -> index(facts, row));
  }

  /** The drugs under some facts. */
  public static Drugs of(Facts facts) {
    return facts.once(Drugs.class, Drugs::new);
  }

  private static DrugEntry entry(Facts facts, String row) {
    return new DrugEntry(
        row.substring(ROW.length()),
        facts.word(row + ".class"),
        DrugEntry.Kind.valueOf(facts.word(row + ".kind").toUpperCase(Locale.ROOT)),
        new DrugEntry.Intervals(
            word(facts, row + ".intervals"),
            word(facts, row + ".intervals-iv"),
            word(facts, row + ".intervals-sc")),
        word(facts, row + ".note").orElse(""),
        facts.grounds(row + NAMES));
  }

  private static Optional<String> word(Facts facts, String key) {
    return facts.find(key).map(fact -> fact.value().toText());
  }

  private void index(Facts facts, String row) {
    List<DrugEntry> meant =
        word(facts, row + ".parts")
            .map(parts -> Arrays.stream(parts.split(" ", -1)).map(this::byName).toList())
            .orElseGet(() -> List.of(byName(row.substring(ROW.length()))));
    for (String name : facts.word(row + NAMES).split(", ", -1)) {
      DrugText text = DrugText.of(name);
      int count = text.words().size();
      bySpaced.putIfAbsent(text.spaced(0, count), meant);
      byJoined.putIfAbsent(text.joined(0, count), meant);
      bySpelling.putIfAbsent(DrugText.spelled(text.joined(0, count)), meant);
      printed.putIfAbsent(text.joined(0, count), name);
    }
  }

  private DrugEntry byName(String name) {
    DrugEntry entry = entries.get(name);
    if (entry == null) {
      throw new IllegalStateException("no drug " + name);
    }
    return entry;
  }

  /** Everything that one text names, in order; a part without a known name is kept as unknown. */
  public List<TypedDrug> parse(String typed) {
    List<TypedDrug> all = new ArrayList<>();
    for (String part : BETWEEN.split(typed, -1)) {
      List<TypedDrug> found = part(part.strip());
      if (found.isEmpty() && !all.isEmpty()) {
        TypedDrug last = all.removeLast();
        all.add(
            new TypedDrug(
                last.typed() + ", " + part.strip(),
                last.entry(),
                last.dose().or(doses.read(part)),
                last.nearest()));
      }
      all.addAll(found);
    }
    return all.isEmpty() ? List.of(unknown(typed.strip())) : all;
  }

  /** A dose typed in a field of its own. */
  public Dose dose(String typed) {
    return doses.read(typed);
  }

  /** What one part names; empty when it holds nothing but a dose. */
  private List<TypedDrug> part(String part) {
    DrugText text = DrugText.of(part);
    List<TypedDrug> all = new ArrayList<>();
    boolean isKnown = false;
    int at = 0;
    while (at < text.words().size()) {
      Match match = longest(text, at);
      if (match.count > 0) {
        isKnown = true;
        int end = next(text, at + match.count);
        Dose dose = doses.read(text.plain().substring(text.words().get(at).from(), end));
        match.meant.forEach(e -> all.add(new TypedDrug(part, Optional.of(e), dose, List.of())));
        at += match.count;
      } else {
        at++;
      }
    }
    return isKnown ? withSuspects(all, text) : unknownUnlessDose(part, text);
  }

  /** Where the words about a drug end: at the next drug, or at the end. */
  private int next(DrugText text, int from) {
    for (int i = from; i < text.words().size(); i++) {
      if (longest(text, i).count > 0) {
        return text.words().get(i).from();
      }
    }
    return text.plain().length();
  }

  private record Match(int count, List<DrugEntry> meant) {}

  private Match longest(DrugText text, int at) {
    for (int count = Math.min(LONGEST, text.words().size() - at); count > 0; count--) {
      Optional<List<DrugEntry>> meant = meant(text, at, count);
      if (meant.isPresent() && !(count == 1 && text.words().get(at).isNumber())) {
        return new Match(count, meant.get());
      }
    }
    return new Match(0, List.of());
  }

  private Optional<List<DrugEntry>> meant(DrugText text, int at, int count) {
    List<DrugEntry> spaced = bySpaced.get(text.spaced(at, count));
    if (spaced != null || !text.isOneName(at, count)) {
      return Optional.ofNullable(spaced);
    }
    String joined = text.joined(at, count);
    return Optional.ofNullable(byJoined.get(joined))
        .or(() -> Optional.ofNullable(bySpelling.get(DrugText.spelled(joined))))
        .or(() -> count == 1 ? inside(joined) : Optional.empty());
  }

  /** A name inside a word of a script that is written without spaces. */
  private Optional<List<DrugEntry>> inside(String word) {
    return isUnspaced(word)
        ? byJoined.entrySet().stream()
            .filter(e -> isUnspaced(e.getKey()) && word.contains(e.getKey()))
            .max(Comparator.comparingInt(e -> e.getKey().length()))
            .map(Map.Entry::getValue)
        : Optional.empty();
  }

  private static boolean isUnspaced(String word) {
    return word.codePoints().allMatch(c -> c >= UNSPACED_FROM);
  }

  /** Words beside a known name that look like another drug are not passed over. */
  private List<TypedDrug> withSuspects(List<TypedDrug> found, DrugText text) {
    List<TypedDrug> all = new ArrayList<>(found);
    int at = 0;
    while (at < text.words().size()) {
      int count = longest(text, at).count;
      String word = text.words().get(at).text();
      if (count == 0 && isSuspect(word)) {
        all.add(unknown(word));
      }
      at += Math.max(1, count);
    }
    return all;
  }

  private boolean isSuspect(String word) {
    return word.length() >= ENDING_FROM
        && !ordinary.contains(word)
        && (endings.stream().anyMatch(word::endsWith) || !nearest(word).isEmpty());
  }

  private List<TypedDrug> unknownUnlessDose(String part, DrugText text) {
    boolean isDose =
        text.words().stream()
            .allMatch(
                w ->
                    w.isNumber()
                        || w.text().length() < SHORTEST_WORD
                        || ordinary.contains(w.text()));
    return isDose ? List.of() : List.of(unknown(part));
  }

  private TypedDrug unknown(String typed) {
    DrugText text = DrugText.of(typed);
    List<String> near =
        text.words().stream()
            .filter(w -> !w.isNumber() && !ordinary.contains(w.text()))
            .flatMap(w -> nearest(w.text()).stream())
            .distinct()
            .limit(SpellingDistance.NAMED)
            .toList();
    return new TypedDrug(typed, Optional.empty(), doses.read(typed), near);
  }

  /** The known names most like a word. */
  private List<String> nearest(String word) {
    return SpellingDistance.nearest(word, printed);
  }

  /** Everything typed, in order. */
  public List<TypedDrug> parse(Stream<String> typed) {
    return typed.flatMap(text -> parse(text).stream()).toList();
  }
}
