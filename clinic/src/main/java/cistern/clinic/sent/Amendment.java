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
  private static final String LEFT_OVER = "leftOver";
  private static final String WINDOW = "same-puncture.upper";
  private static final List<String> FLUIDS = List.of("csf", "serum");

  /**
   * One result that was sent.
   *
   * @param code of the sample
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
    Map<String, String> before = new LinkedHashMap<>();
    results(file).forEach(r -> before.put(code(r), text(r)));
    for (Json result : results(sent.document())) {
      String code = code(result);
      changes.add(new SentValue(code, before.getOrDefault(code, ""), text(result)));
    }
    return changes;
  }

  private static List<Json> results(Json.Structure workup) {
    return workup.members().get(RESULTS) instanceof Json.Sequence sequence
        ? sequence.items()
        : List.of();
  }

  private static String code(Json result) {
    return word(result, "analyte") + "." + word(result, "in");
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
    members.put(RESULTS, new Json.Sequence(mergedResults()));
    filled(PERSON, member(file, PERSON), member(sent.document(), PERSON), members);
    draws(members);
    if (sent.document().members().containsKey(BANDS) && !isGelInTheWay()) {
      SequencedMap<String, Json> bands = new LinkedHashMap<>(member(file, BANDS).members());
      bands.putAll(member(sent.document(), BANDS).members());
      members.put(BANDS, new Json.Structure(bands));
    }
    leftOver(members);
    return new Json.Structure(members);
  }

  private List<Json> mergedResults() {
    SequencedMap<String, Json> bySample = new LinkedHashMap<>();
    results(file).forEach(r -> bySample.put(code(r), r));
    results(sent.document()).forEach(r -> bySample.put(code(r), r));
    return List.copyOf(bySample.values());
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
