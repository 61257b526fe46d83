package cistern.fact;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * All facts in force: the tables that ship with the program, changed where local policy says so.
 */
public final class Facts {

  private static final List<String> MEDICINE =
      List.of(
          "panel.tsv",
          "barrier.tsv",
          "fluid.tsv",
          "bands.tsv",
          "input.tsv",
          "criteria.tsv",
          "puncture.tsv",
          "antithrombotic.tsv",
          "followup.tsv",
          "differential.tsv",
          "redflag.tsv",
          "urgent.tsv",
          "cohort.tsv");

  private static final Facts STANDARD =
      of(MEDICINE.stream().map(name -> FactTable.read(Facts.class, name)).toList());

  private final Map<String, Fact> byKey;
  private final Map<String, List<String>> byFamily;
  private final Map<String, Grounds> groundsByKey = new ConcurrentHashMap<>();
  private final Map<Class<?>, Object> made = new ConcurrentHashMap<>();
  private final Map<String, Facts> narrowed = new ConcurrentHashMap<>();
  private final String version;
  private final Optional<String> policy;

  private Facts(Map<String, Fact> byKey, String version, Optional<String> policy) {
    this.byKey = Collections.unmodifiableMap(byKey);
    this.byFamily = byKey.keySet().stream().collect(Collectors.groupingBy(Facts::family));
    this.version = version;
    this.policy = policy;
  }

  /** The facts that ship with the medicine. */
  public static Facts standard() {
    return STANDARD;
  }

  /**
   * The facts of some tables.
   *
   * @throws IllegalStateException when a key comes twice
   */
  public static Facts of(List<FactTable> tables) {
    Map<String, Fact> byKey = new LinkedHashMap<>();
    for (FactTable table : tables) {
      for (Fact fact : table.facts()) {
        if (byKey.put(fact.key(), fact) != null) {
          throw new IllegalStateException("the fact " + fact.key() + " stands twice");
        }
      }
    }
    String version =
        tables.stream()
            .map(t -> t.name().replace(".tsv", "") + " " + t.version())
            .collect(Collectors.joining(", "));
    return new Facts(byKey, version, Optional.empty());
  }

  /** These facts and the rows of further tables. */
  public Facts with(FactTable... tables) {
    Map<String, Fact> all = new LinkedHashMap<>(byKey);
    List<String> versions = new ArrayList<>(List.of(version));
    for (FactTable table : tables) {
      for (Fact fact : table.facts()) {
        if (all.put(fact.key(), fact) != null) {
          throw new IllegalStateException("the fact " + fact.key() + " stands twice");
        }
      }
      versions.add(table.name().replace(".tsv", "") + " " + table.version());
    }
    return new Facts(all, String.join(", ", versions), policy);
  }

  /** These facts as a local policy changes them; its keys are known and its units agree. */
  public Facts with(Policy local) {
    Map<String, Fact> changed = new LinkedHashMap<>(byKey);
    local
        .changes()
        .forEach(
            (key, change) ->
                changed.put(key, fact(key).withLocal(change.value(), change.source())));
    return new Facts(changed, version, Optional.of(local.name()));
  }

  /**
   * The fact of a key, if there is one. A unit may be that of one laboratory, which its key names
   * behind the sample: {@code unit.glucose.csf@Central Laboratory}; it is that of the house until
   * something else is said for the laboratory.
   */
  public Optional<Fact> find(String key) {
    Fact known = byKey.get(key);
    return known == null
        ? UnitKey.parse(key).map(unit -> byKey.get(unit.ofHouse())).map(house -> house.withKey(key))
        : Optional.of(known);
  }

  /** These facts for the results of a laboratory, in whose units they are written. */
  public Facts at(String laboratory) {
    List<Fact> own =
        keys(UnitKey.START).stream()
            .filter(key -> UnitKey.parse(key).filter(unit -> unit.isOf(laboratory)).isPresent())
            .map(this::fact)
            .toList();
    return own.isEmpty()
        ? this
        : narrowed.computeIfAbsent(UnitKey.plain(laboratory), l -> with(own));
  }

  private Facts with(List<Fact> own) {
    Map<String, Fact> changed = new LinkedHashMap<>(byKey);
    own.forEach(
        fact -> {
          String house = UnitKey.parse(fact.key()).orElseThrow().ofHouse();
          changed.put(house, fact.withKey(house));
        });
    return new Facts(changed, version, policy);
  }

  /**
   * The fact of a key.
   *
   * @throws IllegalArgumentException when there is none: a fault of the program
   */
  public Fact fact(String key) {
    Optional<Fact> found = find(key);
    if (found.isEmpty()) {
      throw new IllegalArgumentException("no fact " + key);
    }
    return found.get();
  }

  /** The number of a key, in the fact's unit. */
  public double number(String key) {
    return switch (fact(key).value()) {
      case FactValue.Figure n -> n.value();
      case FactValue.Word w -> throw new IllegalArgumentException(key + " is a word");
      case FactValue.Unit u -> throw new IllegalArgumentException(key + " is a unit");
    };
  }

  /** The word of a key. */
  public String word(String key) {
    return fact(key).value().toText();
  }

  /** What the facts of some keys amount to together. */
  public Grounds grounds(String... keys) {
    Grounds all = Grounds.MEASURED;
    for (String key : keys) {
      all = all.and(groundsByKey.computeIfAbsent(key, k -> Grounds.of(fact(k))));
    }
    return all;
  }

  /** All facts in the order of their tables. */
  public Collection<Fact> all() {
    return byKey.values();
  }

  /**
   * The keys that begin alike, in the order of their tables.
   *
   * @param start at least the first part of a key with the point after it
   */
  public List<String> keys(String start) {
    return byFamily.getOrDefault(family(start), List.of()).stream()
        .filter(key -> key.startsWith(start))
        .toList();
  }

  private static String family(String key) {
    int point = key.indexOf('.');
    return point < 0 ? key : key.substring(0, point);
  }

  /**
   * What is built of these facts, built when it is first asked for and then kept.
   *
   * @param type what it is
   * @param of builds it; the result never changes and may be used by several threads
   */
  public <T> T once(Class<T> type, Function<Facts, T> of) {
    Object kept = made.get(type);
    if (kept == null) {
      T now = of.apply(this);
      kept = Objects.requireNonNullElse(made.putIfAbsent(type, now), now);
    }
    return type.cast(kept);
  }

  /** The names and versions of the tables. */
  public String version() {
    return version;
  }

  /** The name of the local policy in force, if any. */
  public Optional<String> policy() {
    return policy;
  }
}
