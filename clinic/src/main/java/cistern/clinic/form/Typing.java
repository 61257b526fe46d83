package cistern.clinic.form;

import cistern.exchange.json.Json;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What a person has typed into the form of a step, against the case as it was and as it is. */
public final class Typing {

  private final CaseStep step;
  private final Map<String, String> typedByKey;
  private final Map<String, String> questionsByKey;
  private final ZoneId zone;

  private Typing(
      CaseStep step,
      Map<String, String> typedByKey,
      Map<String, String> questionsByKey,
      ZoneId zone) {
    this.step = step;
    this.typedByKey = Map.copyOf(typedByKey);
    this.questionsByKey = Map.copyOf(questionsByKey);
    this.zone = zone;
  }

  /**
   * Typing in a step.
   *
   * @param typedByKey what stands in the fields; a field that was not sent was not changed
   * @param zone the clinic's time
   */
  public static Typing of(CaseStep step, Map<String, String> typedByKey, ZoneId zone) {
    return new Typing(step, typedByKey, Map.of(), zone);
  }

  /** Nothing typed. */
  public static Typing none(CaseStep step, ZoneId zone) {
    return new Typing(step, Map.of(), Map.of(), zone);
  }

  /** The same with results brought into the form in which a file holds them, or asked about. */
  public Typing written(WrittenResults results, Json.Structure base) {
    Map<String, String> typed = new TreeMap<>(typedByKey);
    Map<String, String> questions = new TreeMap<>(questionsByKey);
    for (Typable field : fields()) {
      String text = typedByKey.getOrDefault(field.key(), "");
      if (field instanceof ResultField result
          && !text.isBlank()
          && !text.equals(field.toTyped(base, zone))) {
        switch (results.read(result.sample(), text)) {
          case WrittenResults.Reading.Clear clear -> typed.put(field.key(), clear.text());
          case WrittenResults.Reading.Asked asked -> questions.put(field.key(), asked.question());
        }
      }
    }
    return new Typing(step, typed, questions, zone);
  }

  /**
   * The same with every question of a group that is not answered with yes answered with no, but for
   * what is not asked here or is asked for itself.
   */
  public Typing noneOf(String group, Json.Structure file) {
    Map<String, String> typed = new TreeMap<>(typedByKey);
    for (Typable each : fields()) {
      boolean isMeant =
          each.isQuestion() && each.group().equals(group) && !isAlone(each) && isAsked(each, file);
      if (isMeant && !shown(each, file).equals("yes")) {
        typed.put(each.key(), "no");
      }
    }
    return new Typing(step, typed, questionsByKey, zone);
  }

  /** The same with some fields set aside, each with what is asked beside it. */
  public Typing asking(Map<String, String> more) {
    Map<String, String> all = new TreeMap<>(questionsByKey);
    all.putAll(more);
    return new Typing(step, typedByKey, all, zone);
  }

  /** What is asked beside fields that are not taken, by field. */
  public Map<String, String> questions() {
    return questionsByKey;
  }

  /** What is typed in the fields that are not taken. */
  public Map<String, String> aside() {
    Map<String, String> aside = new TreeMap<>();
    questionsByKey.keySet().forEach(key -> aside.put(key, typedByKey.getOrDefault(key, "")));
    return aside;
  }

  /** The fields of the step, in order. */
  public List<Typable> fields() {
    return StepFields.of(step);
  }

  /** What stands in a field: what was typed, else what the file holds. */
  public String shown(Typable field, Json.Structure file) {
    return Optional.ofNullable(typedByKey.get(field.key()))
        .orElseGet(() -> field.toTyped(file, zone));
  }

  /** Whether a field is asked, by what the others hold; one that holds something always is. */
  public boolean isAsked(Typable field, Json.Structure file) {
    return !shown(field, file).isEmpty()
        || Asked.isAsked(
            field.key(),
            key ->
                fields().stream()
                    .filter(f -> f.key().equals(key))
                    .map(f -> shown(f, file))
                    .findFirst()
                    .orElse(""));
  }

  /** Whether a field is one more of a kind, asked only after the one before it. */
  public static boolean isOneMore(Typable field) {
    return Asked.isOneMore(field.key());
  }

  /**
   * A label inside a sentence; a name in capitals stays as it is, and a question loses its sign.
   */
  public static String inside(String label) {
    boolean isWord = label.startsWith("A ") || Character.isLowerCase(label.charAt(1));
    String plain = label.endsWith("?") ? label.substring(0, label.length() - 1) : label;
    return isWord ? plain.substring(0, 1).toLowerCase(Locale.ROOT) + plain.substring(1) : plain;
  }

  /** Whether a question is asked for itself, so that none of these does not answer it. */
  public static boolean isAlone(Typable question) {
    return Asked.isAlone(question.key());
  }

  /** What a file holds in a field. */
  public String held(Typable field, Json.Structure file) {
    return field.toTyped(file, zone);
  }

  /** What differs from the file that the form was opened on, by field. */
  Map<Typable, String> changes(Json.Structure base) {
    Map<Typable, String> changes = new LinkedHashMap<>();
    for (Typable field : fields()) {
      String typed = shown(field, base);
      boolean isTaken = !questionsByKey.containsKey(field.key());
      if (isTaken && !typed.equals(field.toTyped(base, zone))) {
        changes.put(field, typed);
      }
    }
    return changes;
  }

  /** The file as it is now, with what was changed here; nothing else of it is touched. */
  public Json.Structure applied(Json.Structure base, Json.Structure current) {
    Map<Typable, String> changes = changes(base);
    if (changes.isEmpty()) {
      return current;
    }
    Json.Structure changed = current;
    for (Map.Entry<Typable, String> change : changes.entrySet()) {
      changed = change.getKey().with(changed, change.getValue(), zone);
    }
    return JsonPath.pruned(changed).orElse(changed) instanceof Json.Structure structure
        ? structure
        : changed;
  }

  /**
   * Where somebody else has meanwhile changed the same field to something else: by key, what it is
   * now.
   */
  public Map<String, String> collisions(Json.Structure base, Json.Structure current) {
    Map<String, String> collisions = new TreeMap<>();
    changes(base)
        .forEach(
            (field, typed) -> {
              String now = field.toTyped(current, zone);
              if (!now.equals(field.toTyped(base, zone)) && !now.equals(typed)) {
                collisions.put(field.key(), now);
              }
            });
    return collisions;
  }

  /** Whether nothing was changed. */
  public boolean isUnchanged(Json.Structure base) {
    return changes(base).isEmpty();
  }

  /** The field that a problem at a place of a file is about, if it is one of these. */
  public Optional<Typable> at(String place, Json.Structure file) {
    return fields().stream()
        .filter(
            f ->
                switch (f) {
                  case FormField field -> field.isAt(place);
                  case ResultField result ->
                      result
                          .place(file)
                          .filter(p -> place.equals(p) || place.startsWith(p + "."))
                          .isPresent();
                })
        .findFirst();
  }
}
