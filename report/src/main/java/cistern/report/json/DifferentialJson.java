package cistern.report.json;

import cistern.differential.Argument;
import cistern.differential.CohortContext;
import cistern.differential.DifferentialResult;
import cistern.differential.Prior;
import cistern.differential.Probability;
import cistern.differential.Weight;

/** What else it could be, in reasons; and the one number that cohorts allow, or why not. */
final class DifferentialJson {

  private DifferentialJson() {}

  static void write(JsonObject json, DifferentialResult result) {
    json.object(
        "differential",
        item -> {
          item.object("prior", prior -> result.prior().ifPresent(p -> prior(prior, p)));
          item.list("diseases", result.arguments(), DifferentialJson::argument);
          item.list("evidence", result.weights(), DifferentialJson::weight);
          item.strings("assumptions", result.assumptions());
        });
    json.object("probability", item -> probability(item, result.probability()));
  }

  private static void prior(JsonObject json, Prior prior) {
    json.numbers("ms", prior.low(), prior.high());
    json.with("usesMri", prior.usesMri().word());
  }

  private static void argument(JsonObject json, Argument argument) {
    json.with("code", argument.disease().code());
    json.strings("for", argument.reasonsFor());
    json.strings("against", argument.reasonsAgainst());
    json.grounds(argument.grounds());
  }

  private static void weight(JsonObject json, Weight weight) {
    json.with("finding", weight.observation().trait().finding());
    json.with("found", weight.observation().isFound() ? "yes" : "no");
    json.with("disease", "ms");
    weight.logOdds().ifPresent(log -> json.with("logOdds", log));
    weight.interval95().ifPresent(e -> json.numbers("interval95", e.lower(), e.upper()));
    json.with("note", weight.note());
  }

  private static void probability(JsonObject json, Probability probability) {
    json.with("status", probability.status().word());
    json.with("context", probability.context().map(CohortContext::code));
    probability
        .prior()
        .ifPresentOrElse(
            prior -> json.numbers("prior", prior.low(), prior.high()), () -> json.nothing("prior"));
    probability
        .given()
        .ifPresentOrElse(
            given -> {
              json.with("point", given.point());
              json.numbers("interval95", given.interval95().lower(), given.interval95().upper());
              json.with("cohorts", given.cohorts());
              json.with("people", given.people());
            },
            () -> {
              json.nothing("point");
              json.nothing("interval95");
            });
    json.with("reason", probability.reason());
    json.strings("unknown", probability.unknown());
  }
}
