package cistern.report.json;

import cistern.differential.Argument;
import cistern.differential.CountTable;
import cistern.differential.DifferentialResult;
import cistern.differential.Posterior;
import cistern.differential.PracticeCompared;
import cistern.differential.Weight;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** What else it could be: numbers where a prior and enough counts allow them, else arguments. */
final class DifferentialJson {

  private DifferentialJson() {}

  static void write(JsonObject json, DifferentialResult result) {
    json.object(
        "differential",
        item -> {
          item.object("prior", prior -> prior(prior, result));
          item.list("diseases", diseases(result), (disease, fields) -> fields.accept(disease));
          item.list("evidence", result.weights(), DifferentialJson::weight);
          item.list("counts", result.counts(), DifferentialJson::counts);
          item.list("practice", result.practice(), DifferentialJson::practice);
          item.strings("assumptions", result.assumptions());
        });
  }

  /** Those with a number, then those with arguments only. */
  private static List<Consumer<JsonObject>> diseases(DifferentialResult result) {
    List<Consumer<JsonObject>> all = new ArrayList<>();
    result.posteriors().forEach(posterior -> all.add(disease -> posterior(disease, posterior)));
    result.arguments().forEach(argument -> all.add(disease -> argument(disease, argument)));
    return all;
  }

  private static void prior(JsonObject json, DifferentialResult result) {
    result
        .prior()
        .ifPresent(
            prior -> {
              json.numbers("ms", prior.low(), prior.high());
              json.with("usesMri", prior.usesMri().word());
              json.with("middle", prior.middle());
            });
    json.object(
        "split",
        split -> result.split().forEach((disease, share) -> split.with(disease.code(), share)));
  }

  private static void posterior(JsonObject json, Posterior posterior) {
    json.with("code", posterior.disease().code());
    json.with("posterior", posterior.probability());
    json.numbers("interval95", posterior.interval95().lower(), posterior.interval95().upper());
    json.grounds(posterior.grounds());
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
    json.with("disease", weight.disease().code());
    json.with("against", weight.isAgainstRest() ? "rest" : "ms");
    json.with("witness", weight.observation().trait().witness().code());
    json.with("logOdds", weight.logOdds());
    weight.interval95().ifPresent(ends -> json.numbers("interval95", ends.lower(), ends.upper()));
  }

  private static void counts(JsonObject json, CountTable table) {
    json.with("disease", table.group());
    json.with("rate", table.rate());
    json.with("mean", table.mean());
    json.numbers("interval95", table.interval95().lower(), table.interval95().upper());
    json.with("effective", table.effective());
    json.list("series", table.rows(), DifferentialJson::count);
  }

  private static void count(JsonObject json, CountTable.Row row) {
    json.with("series", row.series());
    json.with("positive", row.count().positive());
    json.with("of", row.count().of());
    json.with("share", row.count().share());
    json.numbers("interval95", row.interval95().lower(), row.interval95().upper());
    json.grounds(row.grounds());
  }

  private static void practice(JsonObject json, PracticeCompared practice) {
    json.with("disease", practice.disease().code());
    json.with("differs", practice.isDifferent() ? "yes" : "no");
    json.with("text", practice.text());
    json.with("status", practice.status().word());
  }
}
