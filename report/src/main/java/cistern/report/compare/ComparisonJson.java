package cistern.report.compare;

import cistern.analysis.Puncture;
import cistern.bands.BandReading;
import cistern.followup.BandChange;
import cistern.followup.Change;
import cistern.followup.Comparison;
import cistern.followup.Comparison.Step;
import cistern.followup.Remark;
import cistern.measurement.Interval;
import cistern.report.json.JsonObject;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;

/** A comparison as one JSON object; numbers are not rounded, changes are fractions. */
public final class ComparisonJson {

  private static final int VERSION = 1;

  private final String software;
  private final String facts;
  private final Optional<String> policy;

  private ComparisonJson(String software, String facts, Optional<String> policy) {
    this.software = software;
    this.facts = facts;
    this.policy = policy;
  }

  /**
   * A writer.
   *
   * @param software the name and version of the program
   * @param facts the names and versions of the fact tables
   * @param policy the local policy in force
   */
  public static ComparisonJson of(String software, String facts, Optional<String> policy) {
    return new ComparisonJson(software, facts, policy);
  }

  /**
   * Writes one comparison. {@code bands} is that of the last step; every step has its own in {@code
   * steps}.
   */
  public void write(JsonGenerator json, Comparison comparison) {
    JsonObject.write(json, object -> write(object, comparison));
  }

  private void write(JsonObject json, Comparison comparison) {
    json.with("comparison", VERSION);
    json.with("software", software);
    json.with("facts", facts);
    json.with("policy", policy);
    json.with("person", comparison.person());
    json.with("days", comparison.days());
    punctures(json, comparison.punctures());
    json.list(
        "changes",
        comparison.steps().stream()
            .flatMap(step -> step.changes().stream().map(change -> Map.entry(step, change)))
            .toList(),
        (item, change) -> change(item, change.getKey(), change.getValue()));
    json.object("bands", bands -> bands(bands, comparison.steps().getLast()));
    json.list("steps", comparison.steps(), ComparisonJson::step);
    json.ranked("statements", comparison.remarks(), ComparisonJson::remark);
  }

  private static void punctures(JsonObject json, List<Puncture> punctures) {
    json.list(
        "punctures",
        punctures,
        (item, puncture) -> {
          item.with("workup", puncture.workup());
          item.with("at", puncture.at().map(OffsetDateTime::toString));
          item.with("pairing", puncture.panel().pairing().verdict().word());
        });
  }

  private static void change(JsonObject json, Step step, Change change) {
    json.with("code", change.code());
    json.with("fromWorkup", step.earlier().workup());
    json.with("toWorkup", step.later().workup());
    value(json, "from", change.from());
    value(json, "to", change.to());
    change
        .limits()
        .ifPresentOrElse(
            limits -> json.numbers("changeLimits", limits.down(), limits.up()),
            () -> json.nothing("changeLimits"));
    json.with("verdict", change.verdict().word());
    json.with("note", change.note());
    json.grounds(change.grounds());
  }

  /** A number, or null with the bounds beside it. */
  private static void value(JsonObject json, String name, Optional<Interval> value) {
    if (value.isPresent() && value.get().isExact()) {
      json.with(name, value.get().exactly());
      return;
    }
    json.nothing(name);
    value.ifPresent(v -> json.numbers(name + "Bounds", v.lower(), v.upper()));
  }

  private static void step(JsonObject json, Step step) {
    json.with("fromWorkup", step.earlier().workup());
    json.with("toWorkup", step.later().workup());
    json.with("days", step.days());
    json.object("bands", bands -> bands(bands, step));
  }

  private static void bands(JsonObject json, Step step) {
    BandChange bands = step.bands();
    json.with("gained", bands.gained());
    json.with("lost", bands.lost());
    json.with("verdict", bands.verdict().word());
    json.with("methodChanged", bands.isMethodChanged());
    reading(json, "from", bands.from());
    reading(json, "to", bands.to());
    bands
        .chances()
        .ifPresent(
            chances -> {
              json.with("probabilityMore", chances.more());
              json.with("probabilityFewer", chances.fewer());
            });
  }

  private static void reading(JsonObject json, String name, BandReading reading) {
    json.object(
        name,
        item -> {
          item.with("csfOnly", reading.counts().csfOnly());
          item.with("verdict", reading.verdict().word());
          item.with("cutOff", reading.cutOff());
          item.with("method", BandChange.method(reading.report()));
        });
  }

  private static void remark(JsonObject json, Remark remark) {
    json.with("code", remark.code());
    json.with("text", remark.text());
    json.grounds(remark.grounds());
  }
}
