package cistern.report.plan;

import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.TakenDrugs;
import cistern.puncture.decision.Contraindication;
import cistern.puncture.drug.DrugEntry;
import cistern.report.json.JsonObject;
import cistern.urgent.Urgency;
import java.time.OffsetDateTime;
import java.util.Optional;

/** What is urgent, whether to go on, why not, and every drug as it was typed. */
final class DecisionJson {

  private DecisionJson() {}

  static void write(JsonObject json, PuncturePlan plan) {
    json.object(
        "verdict",
        item -> {
          item.with("go", plan.decision().verdict().go().word());
          item.strings("because", plan.decision().verdict().because());
          item.with("earliest", plan.decision().verdict().earliest().map(OffsetDateTime::toString));
        });
    json.list(
        "contraindications", plan.decision().contraindications(), DecisionJson::contraindication);
    json.list("urgent", plan.urgent(), DecisionJson::urgency);
    json.list("drugs", plan.bleeding().drugs().all(), DecisionJson::drug);
    json.object(
        "clearance",
        item -> {
          item.with("value", plan.bleeding().clearance().value());
          item.with("unit", "mL/min");
          item.with("text", plan.bleeding().clearance().toText());
          item.numbers(
              "nearThresholds",
              plan.bleeding().clearance().near().stream().mapToDouble(t -> t).toArray());
        });
  }

  static void urgency(JsonObject json, Urgency urgency) {
    json.with("code", urgency.code());
    json.with("tier", urgency.tier().name());
    json.with("state", urgency.state().word());
    json.with("text", urgency.words().say());
    json.with("act", urgency.words().act());
    json.strings("findings", urgency.findings());
    json.object(
        "answered",
        urgency.answered(),
        (item, reply) -> {
          item.with("by", reply.by());
          item.with("at", reply.at().map(OffsetDateTime::toString));
          item.with("reason", reply.reason());
        });
    json.grounds(urgency.grounds());
  }

  private static void contraindication(JsonObject json, Contraindication one) {
    json.with("code", one.code());
    json.with("state", one.state());
    json.with("asks", one.asks().word());
    json.with("text", one.text());
    json.with("instead", one.instead());
    json.strings("reasons", one.reasons());
    json.grounds(one.grounds());
  }

  private static void drug(JsonObject json, TakenDrugs.Taken taken) {
    Optional<DrugEntry> entry = taken.drug().entry();
    json.with("typed", taken.drug().typed());
    json.with("recognised", taken.drug().recognised());
    json.with("class", entry.map(DrugEntry::drugClass));
    json.with(
        "antithrombotic",
        entry
            .map(e -> e.isAntithrombotic() || e.kind() == DrugEntry.Kind.CLASS ? "yes" : "no")
            .orElse("unknown"));
    json.with("ask", taken.drug().isAskedAbout() || isWithoutInterval(taken));
    json.strings("nearest", taken.drug().nearest());
    json.with("note", entry.map(DrugEntry::note).filter(n -> !n.isEmpty()));
    entry.ifPresent(e -> json.grounds(e.grounds()));
  }

  private static boolean isWithoutInterval(TakenDrugs.Taken taken) {
    return taken.drug().entry().filter(DrugEntry::isAntithrombotic).isPresent()
        && taken.drug().intervals().isEmpty();
  }
}
