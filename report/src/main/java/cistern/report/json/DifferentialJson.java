package cistern.report.json;

import cistern.differential.Argument;
import cistern.differential.CountTable;
import cistern.differential.DifferentialResult;
import cistern.differential.Posterior;
import cistern.differential.PracticeCompared;
import cistern.differential.Prior;
import cistern.differential.Proportion;
import cistern.differential.Weight;
import tools.jackson.core.JsonGenerator;

/** What else it could be: numbers where a prior and enough counts allow them, else arguments. */
final class DifferentialJson {

  private DifferentialJson() {}

  static void write(JsonGenerator json, DifferentialResult result) {
    json.writeName("differential");
    json.writeStartObject();
    prior(json, result);
    json.writeName("diseases");
    json.writeStartArray();
    result.posteriors().forEach(posterior -> posterior(json, posterior));
    result.arguments().forEach(argument -> argument(json, argument));
    json.writeEndArray();
    JsonLines.list(json, "evidence", result.weights(), DifferentialJson::weight);
    JsonLines.list(json, "counts", result.counts(), DifferentialJson::counts);
    JsonLines.list(json, "practice", result.practice(), DifferentialJson::practice);
    JsonLines.strings(json, "assumptions", result.assumptions());
    json.writeEndObject();
  }

  private static void prior(JsonGenerator json, DifferentialResult result) {
    json.writeName("prior");
    json.writeStartObject();
    if (result.prior().isPresent()) {
      Prior prior = result.prior().get();
      json.writeName("ms");
      json.writeStartArray();
      json.writeNumber(prior.low());
      json.writeNumber(prior.high());
      json.writeEndArray();
      json.writeStringProperty("usesMri", prior.usesMri().word());
      json.writeNumberProperty("middle", prior.middle());
    }
    json.writeName("split");
    json.writeStartObject();
    result.split().forEach((disease, share) -> json.writeNumberProperty(disease.code(), share));
    json.writeEndObject();
    json.writeEndObject();
  }

  private static void posterior(JsonGenerator json, Posterior posterior) {
    json.writeStartObject();
    json.writeStringProperty("code", posterior.disease().code());
    json.writeNumberProperty("posterior", posterior.probability());
    interval(json, posterior.interval95());
    JsonLines.grounds(json, posterior.grounds());
    json.writeEndObject();
  }

  private static void interval(JsonGenerator json, Proportion.Ends ends) {
    json.writeName("interval95");
    json.writeStartArray();
    json.writeNumber(ends.lower());
    json.writeNumber(ends.upper());
    json.writeEndArray();
  }

  private static void argument(JsonGenerator json, Argument argument) {
    json.writeStartObject();
    json.writeStringProperty("code", argument.disease().code());
    JsonLines.strings(json, "for", argument.reasonsFor());
    JsonLines.strings(json, "against", argument.reasonsAgainst());
    JsonLines.grounds(json, argument.grounds());
    json.writeEndObject();
  }

  private static void weight(JsonGenerator json, Weight weight) {
    json.writeStartObject();
    json.writeStringProperty("finding", weight.observation().trait().finding());
    json.writeStringProperty("found", weight.observation().isFound() ? "yes" : "no");
    json.writeStringProperty("disease", weight.disease().code());
    json.writeStringProperty("against", weight.isAgainstRest() ? "rest" : "ms");
    json.writeStringProperty("witness", weight.observation().trait().witness().code());
    json.writeNumberProperty("logOdds", weight.logOdds());
    weight.interval95().ifPresent(ends -> interval(json, ends));
    json.writeEndObject();
  }

  private static void counts(JsonGenerator json, CountTable table) {
    json.writeStartObject();
    json.writeStringProperty("disease", table.group());
    json.writeStringProperty("rate", table.rate());
    json.writeNumberProperty("mean", table.mean());
    interval(json, table.interval95());
    json.writeNumberProperty("effective", table.effective());
    JsonLines.list(json, "series", table.rows(), DifferentialJson::count);
    json.writeEndObject();
  }

  private static void count(JsonGenerator json, CountTable.Row row) {
    json.writeStartObject();
    json.writeStringProperty("series", row.series());
    json.writeNumberProperty("positive", row.count().positive());
    json.writeNumberProperty("of", row.count().of());
    json.writeNumberProperty("share", row.count().share());
    interval(json, row.interval95());
    JsonLines.grounds(json, row.grounds());
    json.writeEndObject();
  }

  private static void practice(JsonGenerator json, PracticeCompared practice) {
    json.writeStartObject();
    json.writeStringProperty("disease", practice.disease().code());
    json.writeStringProperty("differs", practice.isDifferent() ? "yes" : "no");
    json.writeStringProperty("text", practice.text());
    json.writeStringProperty("status", practice.status().word());
    json.writeEndObject();
  }
}
