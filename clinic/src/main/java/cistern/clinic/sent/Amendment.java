package cistern.clinic.sent;

import cistern.clinic.status.Identity;
import cistern.exchange.json.Json;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One sent work-up against a case: what it would change, and why it may not.
 *
 * @param file of the case as it stands
 * @param sent as it was read
 * @param facts in force
 */
public record Amendment(Json.Structure file, WorkupReading.Understood sent, Facts facts) {

  private static final String RESULTS = "results";
  private static final String PERSON = "person";
  private static final String DRAWS = "draws";
  private static final String BANDS = "bands";
  private static final String SEROLOGY = "serology";
  private static final String LEFT_OVER = "leftOver";
  private static final List<String> OF_ITS_OWN =
      List.of("person", "draws", "results", "bands", "serology", "leftOver", "source");
  private static final String WINDOW = "same-puncture.upper";
  private static final List<String> FLUIDS = List.of("csf", "serum");
  private static final List<String> ANSWERS =
      List.of("csfOnly", "shared", "serumOnly", "pattern", "result");

  /**
   * One result that was sent.
   *
   * @param code of the sample, of an answer on the bands, or of a test in a fluid
   * @param before as the case holds it; empty when it holds none
   * @param now as sent
   */
  public record SentValue(String code, String before, String now) {
    /** Whether it changes nothing. */
    public boolean isSame() {
      return before.equals(now);
    }
  }

  /** Whose it is, as sent. */
  public Identity whose() {
    return Identity.of(sent.document());
  }

  /** Why it is not put into this case; empty when nothing speaks against it. */
  public Optional<String> refusal() {
    return whose()
        .differenceFrom(Identity.of(file))
        .map(d -> "This is another person's: " + d + ". Nothing of it is put into this case.")
        .or(this::otherPuncture);
  }

  private Optional<String> otherPuncture() {
    Optional<OffsetDateTime> here = time(file);
    Optional<OffsetDateTime> there = time(sent.document());
    if (here.isEmpty() || there.isEmpty()) {
      return Optional.empty();
    }
    Duration apart = Duration.between(here.get(), there.get()).abs();
    double hours = apart.toMinutes() / (double) Duration.ofHours(1).toMinutes();
    return hours > facts.number(WINDOW)
        ? Optional.of(
            "This is of another puncture: the fluid was drawn at "
                + there.get()
                + ", that of this case at "
                + here.get()
                + ". Nothing of it is put into this case.")
        : Optional.empty();
  }

  private static Optional<OffsetDateTime> time(Json.Structure workup) {
    Json.Structure csf = member(member(workup, DRAWS), "csf");
    try {
      return csf.members().get("at") instanceof Json.Text at
          ? Optional.of(OffsetDateTime.parse(at.value()))
          : Optional.empty();
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  private static Json.Structure member(Json.Structure in, String name) {
    return in.members().get(name) instanceof Json.Structure structure
        ? structure
        : new Json.Structure(new LinkedHashMap<>());
  }

  /** What is sent of each sample, beside what the case holds of it. */
  public List<SentValue> changes() {
    List<SentValue> changes = new ArrayList<>();
    Map<String, String> before = said(file);
    said(sent.document())
        .forEach(
            (code, now) -> changes.add(new SentValue(code, before.getOrDefault(code, ""), now)));
    if (isGelInTheWay()) {
      changes.removeIf(change -> change.code().startsWith(BANDS + "."));
    }
    return changes;
  }

  /** Every result, answer on the bands and answer of serology by its code. */
  private static SequencedMap<String, String> said(Json.Structure workup) {
    SequencedMap<String, String> said = new LinkedHashMap<>();
    items(workup, RESULTS).forEach(r -> said.put(code(r), text(r)));
    Json.Structure bands = member(workup, BANDS);
    for (String answer : ANSWERS) {
      String word = word(bands, answer);
      if (!word.isEmpty()) {
        said.put(BANDS + "." + answer, word);
      }
    }
    items(workup, SEROLOGY).forEach(s -> said.put(code(s), word(s, "result")));
    return said;
  }

  private static List<Json> items(Json.Structure workup, String list) {
    return workup.members().get(list) instanceof Json.Sequence sequence
        ? sequence.items()
        : List.of();
  }

  /** What may stand once: a sample, of which tubes are told apart, or a test in a fluid. */
  private static String code(Json result) {
    return Stream.of("analyte", "test", "in", "tube")
        .map(name -> word(result, name))
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining("."));
  }

  private static String text(Json result) {
    String below = word(result, "below");
    String above = word(result, "above");
    String number =
        (below.isEmpty() ? "" : "<" + below)
            + (above.isEmpty() ? "" : ">" + above)
            + word(result, "value");
    return (number + " " + word(result, "unit")).strip();
  }

  private static String word(Json result, String name) {
    if (!(result instanceof Json.Structure structure)) {
      return "";
    }
    return switch (structure.members().get(name)) {
      case Json.Text text -> text.value();
      case Json.Numeral numeral -> numeral.literal();
      case null, default -> "";
    };
  }

  /** Whether bands are sent that are not taken, because this case has a gel of its own. */
  public boolean isGelInTheWay() {
    return sent.document().members().containsKey(BANDS)
        && member(file, BANDS).members().containsKey("gel");
  }

  /** The case's file with what was sent; what stands in it beside that stays. */
  public Json.Structure amended() {
    SequencedMap<String, Json> members = new LinkedHashMap<>(file.members());
    members.put(RESULTS, new Json.Sequence(merged(RESULTS)));
    if (sent.document().members().containsKey(SEROLOGY)) {
      members.put(SEROLOGY, new Json.Sequence(merged(SEROLOGY)));
    }
    filled(PERSON, member(file, PERSON), member(sent.document(), PERSON), members);
    draws(members);
    if (sent.document().members().containsKey(BANDS) && !isGelInTheWay()) {
      SequencedMap<String, Json> bands = new LinkedHashMap<>(member(file, BANDS).members());
      bands.putAll(member(sent.document(), BANDS).members());
      members.put(BANDS, new Json.Structure(bands));
    }
    for (Map.Entry<String, Json> other : sent.document().members().entrySet()) {
      if (other.getValue() instanceof Json.Structure more && !OF_ITS_OWN.contains(other.getKey())) {
        filled(other.getKey(), member(file, other.getKey()), more, members);
      }
    }
    leftOver(members);
    return new Json.Structure(members);
  }

  private List<Json> merged(String list) {
    SequencedMap<String, Json> byCode = new LinkedHashMap<>();
    items(file, list).forEach(r -> byCode.put(code(r), r));
    items(sent.document(), list).forEach(r -> byCode.put(code(r), r));
    return List.copyOf(byCode.values());
  }

  /** What a case does not say yet; what it says stays. */
  private static void filled(
      String name, Json.Structure before, Json.Structure more, SequencedMap<String, Json> members) {
    SequencedMap<String, Json> all = new LinkedHashMap<>(before.members());
    more.members().forEach(all::putIfAbsent);
    if (!all.isEmpty()) {
      members.put(name, new Json.Structure(all));
    }
  }

  private void draws(SequencedMap<String, Json> members) {
    SequencedMap<String, Json> draws = new LinkedHashMap<>(member(file, DRAWS).members());
    for (String fluid : FLUIDS) {
      filled(
          fluid,
          member(member(file, DRAWS), fluid),
          member(member(sent.document(), DRAWS), fluid),
          draws);
    }
    if (!draws.isEmpty()) {
      members.put(DRAWS, new Json.Structure(draws));
    }
  }

  private void leftOver(SequencedMap<String, Json> members) {
    if (sent.document().members().get(LEFT_OVER) instanceof Json.Sequence more) {
      List<Json> all = new ArrayList<>();
      if (file.members().get(LEFT_OVER) instanceof Json.Sequence before) {
        all.addAll(before.items());
      }
      more.items().stream().filter(item -> !all.contains(item)).forEach(all::add);
      members.put(LEFT_OVER, new Json.Sequence(all));
    }
  }
}
