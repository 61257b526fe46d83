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

/** Criteria, red flags, what would settle it, and what the puncture changes. */
final class WeighedJson {

  private WeighedJson() {}

  static void write(JsonObject json, Weighed weighed) {
    json.list("criteria", weighed.criteria(), WeighedJson::criteria);
    json.with("criteriaDifference", weighed.difference());
    json.list("prompts", weighed.prompts(), WeighedJson::prompt);
    DifferentialJson.write(json, weighed.differential());
    json.list("flags", weighed.flags(), WeighedJson::flag);
    json.list("next", weighed.next(), WeighedJson::next);
    puncture(json, weighed.puncture());
  }

  private static void criteria(JsonObject json, CriteriaResult result) {
    json.with("edition", result.edition());
    json.with("ruleSet", result.ruleSet());
    json.with("verdict", result.verdict().word());
    json.strings("rows", result.rows());
    json.with("ditBasis", result.disseminationInTime().map(DisseminationInTime::word));
    json.grounds(result.grounds());
    json.sets("missing", result.missing(), Item::code);
    json.sets("missingAgainst", result.missingAgainst(), Item::code);
    json.list("checklist", result.checklist(), WeighedJson::checked);
    json.with("note", result.note());
  }

  private static void checked(JsonObject json, Checked checked) {
    json.with("item", checked.item().code());
    json.with("answer", checked.answer().word());
    json.with("evidence", checked.evidence());
  }

  private static void prompt(JsonObject json, Prompt prompt) {
    json.with("code", prompt.code());
    json.with("text", prompt.text());
    json.grounds(prompt.grounds());
  }

  private static void flag(JsonObject json, RedFlag flag) {
    json.with("code", flag.code());
    json.with("finding", flag.finding());
    json.strings("suggests", flag.suggests(), Disease::code);
    json.with("text", flag.text());
    json.grounds(flag.grounds());
  }

  private static void next(JsonObject json, NextItem item) {
    json.with("item", item.item());
    item.informationBits().ifPresent(bits -> json.with("informationBits", bits));
    json.strings("changes", item.changes());
    json.with("burden", item.burden().word());
    json.with("text", item.text());
  }

  private static void puncture(JsonObject json, PunctureOutlook puncture) {
    json.object(
        "puncture",
        item -> puncture.effects().forEach((edition, effect) -> item.with(edition, effect.word())));
  }
}
