package cistern.clinic.status;

import cistern.clinic.house.RuleChange;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.policy.PolicyFile;
import cistern.exchange.policy.PolicyReading;
import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;

/**
 * What holds in a clinic for every case.
 *
 * @param facts in force
 * @param policy the local policy's file that changed them; empty without one
 */
public record RulesInForce(Facts facts, String policy) {

  private static final String NUMERAL = "-?(0|[1-9]\\d*)(\\.\\d+)?([eE][-+]?\\d+)?";

  /** A decimal comma; one that may as well part thousands is left, and then asked about. */
  private static final String COMMA = "-?(0|[1-9]\\d*),(\\d{1,2}|\\d{4,})|-?0,\\d+";

  /** A rule as it is typed, read as a policy of this one rule. */
  public static PolicyReading read(RuleChange typed, Facts facts) {
    SequencedMap<String, Json> rule = new LinkedHashMap<>();
    boolean isWord = facts.find(typed.rule()).filter(PolicyFile::isWord).isPresent();
    String value = typed.typed().matches(COMMA) ? typed.typed().replace(',', '.') : typed.typed();
    rule.put(
        "value",
        !isWord && value.matches(NUMERAL) ? new Json.Numeral(value) : new Json.Text(value));
    if (!isWord) {
      rule.put("unit", new Json.Text(typed.unit()));
    }
    rule.put("source", new Json.Text(typed.source()));
    SequencedMap<String, Json> one = new LinkedHashMap<>();
    one.put(typed.rule(), new Json.Structure(rule));
    byte[] policy = text("house rules", one).getBytes(StandardCharsets.UTF_8);
    return PolicyFile.of(facts).read(new ByteArrayInputStream(policy));
  }

  /**
   * These rules as the house changes them: what it decides wins over a policy file.
   *
   * @param changes in force
   */
  public RulesInForce with(List<RuleChange> changes) {
    if (changes.isEmpty()) {
      return this;
    }
    Map<String, Policy.Change> read = new LinkedHashMap<>();
    changes.forEach(
        change -> {
          if (read(change, facts) instanceof PolicyReading.Understood understood) {
            read.putAll(understood.policy().changes());
          }
        });
    long left = changes.size() - (long) read.size();
    long last = changes.stream().mapToLong(RuleChange::number).max().orElse(0);
    String name =
        facts.policy().map(file -> file + " and ").orElse("")
            + "house rules (change "
            + last
            + (left == 0 ? ")" : "; " + left + " not understood)");
    Facts changed = facts.with(new Policy(name, read));
    return new RulesInForce(changed, text(name, changedIn(changed)));
  }

  /** The same rules with some values of a trial, which are named as these and kept nowhere. */
  public RulesInForce trying(Map<String, Policy.Change> changes) {
    return new RulesInForce(facts.with(new Policy(facts.policy().orElse("none"), changes)), policy);
  }

  private static SequencedMap<String, Json> changedIn(Facts facts) {
    SequencedMap<String, Json> all = new LinkedHashMap<>();
    facts.all().stream().filter(Fact::isChanged).forEach(f -> all.put(f.key(), json(f)));
    return all;
  }

  private static Json json(Fact fact) {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    String value = fact.value().toText();
    boolean isFigure = fact.value() instanceof FactValue.Figure;
    members.put("value", isFigure ? new Json.Numeral(value) : new Json.Text(value));
    members.put("unit", new Json.Text(fact.unit()));
    members.put("source", new Json.Text(fact.source()));
    return new Json.Structure(members);
  }

  /** A policy, in the form that every command takes. */
  private static String text(String name, SequencedMap<String, Json> facts) {
    SequencedMap<String, Json> whole = new LinkedHashMap<>();
    whole.put("policy", new Json.Numeral("1"));
    whole.put("name", new Json.Text(name));
    whole.put("facts", new Json.Structure(facts));
    return JsonText.of(new Json.Structure(whole));
  }
}
