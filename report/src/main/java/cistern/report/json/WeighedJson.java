package cistern.report.json;

import cistern.criteria.Checked;
import cistern.criteria.CriteriaResult;
import cistern.criteria.DisseminationInTime;
import cistern.criteria.Item;
import cistern.criteria.Prompt;
import cistern.differential.Disease;
import cistern.redflag.RedFlag;
import cistern.weighing.NextItem;
import cistern.weighing.PunctureOutlook;
import cistern.weighing.Weighed;
import java.util.List;
import tools.jackson.core.JsonGenerator;

/** Criteria, red flags, what would settle it, and what the puncture changes. */
final class WeighedJson {

  private WeighedJson() {}

  static void write(JsonGenerator json, Weighed weighed) {
    JsonLines.list(json, "criteria", weighed.criteria(), WeighedJson::criteria);
    JsonLines.orNull(json, "criteriaDifference", weighed.difference());
    JsonLines.list(json, "prompts", weighed.prompts(), WeighedJson::prompt);
    DifferentialJson.write(json, weighed.differential());
    JsonLines.list(json, "flags", weighed.flags(), WeighedJson::flag);
    JsonLines.list(json, "next", weighed.next(), WeighedJson::next);
    puncture(json, weighed.puncture());
  }

  private static void criteria(JsonGenerator json, CriteriaResult result) {
    json.writeStartObject();
    json.writeStringProperty("edition", result.edition());
    json.writeStringProperty("ruleSet", result.ruleSet());
    json.writeStringProperty("verdict", result.verdict().word());
    JsonLines.strings(json, "rows", result.rows());
    JsonLines.orNull(json, "ditBasis", result.disseminationInTime().map(DisseminationInTime::word));
    JsonLines.grounds(json, result.grounds());
    sets(json, "missing", result.missing());
    sets(json, "missingAgainst", result.missingAgainst());
    JsonLines.list(json, "checklist", result.checklist(), WeighedJson::checked);
    json.writeStringProperty("note", result.note());
    json.writeEndObject();
  }

  private static void sets(JsonGenerator json, String name, List<List<Item>> sets) {
    json.writeName(name);
    json.writeStartArray();
    for (List<Item> set : sets) {
      json.writeStartArray();
      set.forEach(item -> json.writeString(item.code()));
      json.writeEndArray();
    }
    json.writeEndArray();
  }

  private static void checked(JsonGenerator json, Checked checked) {
    json.writeStartObject();
    json.writeStringProperty("item", checked.item().code());
    json.writeStringProperty("answer", checked.answer().word());
    json.writeStringProperty("evidence", checked.evidence());
    json.writeEndObject();
  }

  private static void prompt(JsonGenerator json, Prompt prompt) {
    json.writeStartObject();
    json.writeStringProperty("code", prompt.code());
    json.writeStringProperty("text", prompt.text());
    JsonLines.grounds(json, prompt.grounds());
    json.writeEndObject();
  }

  private static void flag(JsonGenerator json, RedFlag flag) {
    json.writeStartObject();
    json.writeStringProperty("code", flag.code());
    json.writeStringProperty("finding", flag.finding());
    JsonLines.strings(json, "suggests", flag.suggests().stream().map(Disease::code).toList());
    json.writeStringProperty("text", flag.text());
    JsonLines.grounds(json, flag.grounds());
    json.writeEndObject();
  }

  private static void next(JsonGenerator json, NextItem item) {
    json.writeStartObject();
    json.writeStringProperty("item", item.item());
    json.writeNumberProperty("informationBits", item.informationBits());
    json.writeNumberProperty("criteriaBits", item.criteriaBits());
    json.writeNumberProperty("differentialBits", item.differentialBits());
    json.writeStringProperty("burden", item.burden().word());
    json.writeStringProperty("text", item.text());
    json.writeEndObject();
  }

  private static void puncture(JsonGenerator json, PunctureOutlook puncture) {
    json.writeName("puncture");
    json.writeStartObject();
    puncture
        .effects()
        .forEach((edition, effect) -> json.writeStringProperty(edition, effect.word()));
    if (puncture.isPriorStated()) {
      json.writeName("differential");
      json.writeStartObject();
      json.writeNumberProperty("before", puncture.bands().msNow());
      json.writeNumberProperty("chancePositive", puncture.bands().chanceFound());
      json.writeNumberProperty("ifPositive", puncture.bands().msIfFound());
      json.writeNumberProperty("ifNegative", puncture.bands().msIfNot());
      json.writeNumberProperty("expectedShift", puncture.bands().expectedShift());
      json.writeEndObject();
    }
    json.writeEndObject();
  }
}
