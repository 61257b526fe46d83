package cistern.report.json;

import cistern.bedside.RuleReply;
import cistern.urgent.Alerts;
import cistern.urgent.Consideration;
import cistern.urgent.Stop;
import cistern.urgent.Urgency;

/** What comes before any verdict: urgent rules, stops, and what to think of. */
final class AlertsJson {

  private AlertsJson() {}

  static void write(JsonObject json, Alerts alerts) {
    json.list("urgent", alerts.urgent().all(), AlertsJson::urgency);
    json.list("stops", alerts.stops(), AlertsJson::stop);
    json.list("thinkOf", alerts.thinkOf(), AlertsJson::consideration);
  }

  private static void urgency(JsonObject json, Urgency urgency) {
    json.with("code", urgency.code());
    json.with("tier", urgency.tier().name());
    json.with("state", urgency.state().word());
    json.with("text", urgency.words().say());
    json.with("act", urgency.words().act());
    json.strings("findings", urgency.findings());
    json.strings("missing", urgency.words().missing());
    json.object("answered", urgency.answered(), AlertsJson::answered);
    json.grounds(urgency.grounds());
  }

  private static void answered(JsonObject json, RuleReply reply) {
    json.with("by", reply.by());
    json.with("at", reply.at().map(Object::toString));
    json.with("reason", reply.reason());
  }

  private static void stop(JsonObject json, Stop stop) {
    json.with("code", stop.code());
    json.with("effect", stop.effect().word());
    json.with("text", stop.text());
    json.grounds(stop.grounds());
  }

  private static void consideration(JsonObject json, Consideration consideration) {
    json.with("code", consideration.code());
    json.with("term", consideration.term());
    json.strings("for", consideration.reasonsFor());
    json.strings("against", consideration.reasonsAgainst());
    json.strings("next", consideration.next());
  }
}
