package cistern.exchange.policy;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonDocument;
import cistern.exchange.json.NumberRange;
import cistern.exchange.policy.PolicyReading.NotValid;
import cistern.exchange.policy.PolicyReading.Understood;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Ratio;
import cistern.exchange.ucum.UnitTrouble;
import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.fact.UnitKey;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads a local policy, version 1: known keys, the fact's dimension, a source for each. */
public final class PolicyFile {

  private final Facts facts;
  private final InputLimits limits;
  private final Conversions conversions;

  private PolicyFile(Facts facts) {
    this.facts = facts;
    this.limits = InputLimits.of(facts);
    this.conversions = Conversions.of(facts);
  }

  /** A reader of policies for some facts. */
  public static PolicyFile of(Facts facts) {
    return new PolicyFile(facts);
  }

  /** Whether a policy may change a fact. */
  public static boolean isChangeable(Fact fact) {
    return FactRange.of(fact) != FactRange.FIXED;
  }

  /** The words between which a policy may choose for a fact; none when it is no such word. */
  public static List<String> choices(Fact fact) {
    return Choices.of(fact.key());
  }

  /** Whether a policy writes a text for a fact, and no number with a unit. */
  public static boolean isWord(Fact fact) {
    return Choices.isOpen(fact.key());
  }

  /** Reads a file. */
  public PolicyReading read(Path file) {
    InputProblems problems = new InputProblems();
    return read(JsonDocument.read(file, limits, problems), problems);
  }

  /** Reads a stream to its end. */
  public PolicyReading read(InputStream in) {
    InputProblems problems = new InputProblems();
    return read(JsonDocument.read(in, limits, problems), problems);
  }

  private PolicyReading read(Optional<Json.Structure> document, InputProblems problems) {
    Optional<Policy> policy = document.map(whole -> policy(Fields.of(whole, limits, problems)));
    problems
        .kept()
        .forEach(
            unknown -> problems.add(InputProblem.of(InputTrouble.UNKNOWN_FIELD, unknown.place())));
    return policy.isPresent() && problems.isValid()
        ? new Understood(policy.get())
        : new NotValid(problems.invalid());
  }

  private Policy policy(Fields whole) {
    whole.checkGiven("name", "facts");
    Optional<BigDecimal> version = whole.decimal("policy", NumberRange.ANY);
    if (version.isPresent() && version.get().compareTo(BigDecimal.ONE) != 0) {
      whole.add("policy", InputTrouble.VERSION, "1");
    }
    String name = notBlank(whole, "name");
    Map<String, Policy.Change> changes = new LinkedHashMap<>();
    whole
        .object("facts")
        .ifPresent(
            all ->
                all.names().forEach(key -> change(all, key).ifPresent(c -> changes.put(key, c))));
    whole.checkNoOthers();
    return new Policy(name, changes);
  }

  private Optional<Policy.Change> change(Fields all, String key) {
    Optional<Fact> fact = facts.find(key);
    Optional<Fields> given = all.object(key);
    if (fact.isEmpty()) {
      all.add(key, InputTrouble.UNKNOWN_FACT);
      return Optional.empty();
    }
    if (given.isEmpty()) {
      return Optional.empty();
    }
    if (FactRange.of(fact.get()) == FactRange.FIXED) {
      all.add(key, InputTrouble.FIXED_FACT);
      return Optional.empty();
    }
    given.get().checkGiven("value", "source");
    String source = notBlank(given.get(), "source");
    Optional<FactValue> value =
        switch (fact.get().value()) {
          case FactValue.Word word when FactRange.isUnset(fact.get()) ->
              figure(given.get(), fact.get());
          case FactValue.Word word -> word(given.get(), fact.get());
          case FactValue.Unit unit -> word(given.get(), fact.get());
          case FactValue.Figure figure -> figure(given.get(), fact.get());
        };
    given.get().checkNoOthers();
    return value.map(v -> new Policy.Change(v, source));
  }

  private Optional<FactValue> word(Fields given, Fact fact) {
    given.keep("unit");
    String key = fact.key();
    Optional<UnitKey> unit = UnitKey.parse(key);
    if (unit.isPresent()) {
      return PrintUnits.of(conversions).read(unit.get(), given);
    }
    String wanted = Choices.wanted(key);
    if (wanted.isEmpty()) {
      return given
          .word("value", word -> Choices.parse(key, word), Choices.of(key))
          .map(FactValue.Word::new);
    }
    Optional<String> typed = given.text("value");
    Optional<String> word = typed.flatMap(w -> Choices.parse(key, w));
    if (typed.isPresent() && word.isEmpty()) {
      given.add("value", InputTrouble.ILL_FORMED, wanted);
    }
    return word.map(FactValue.Word::new);
  }

  private Optional<FactValue> figure(Fields given, Fact fact) {
    given.checkGiven("unit");
    Optional<BigDecimal> number = given.decimal("value", FactRange.of(fact).sign());
    Optional<String> unit = given.text("unit");
    Optional<Ratio> ratio =
        unit.map(u -> conversions.conversion(u, fact.unit()))
            .flatMap(c -> UnitTrouble.check(c, given, "unit", "this fact", fact.unit()));
    return ratio.isEmpty() || number.isEmpty()
        ? Optional.empty()
        : checked(given, fact, ratio.get().toDouble(number.get()));
  }

  private static Optional<FactValue> checked(Fields given, Fact fact, double value) {
    if (!Double.isFinite(value)) {
      given.add("value", InputTrouble.OVERFLOW, fact.unit());
      return Optional.empty();
    }
    if (FactRange.of(fact) == FactRange.COUNT && value != Math.rint(value)) {
      given.add("value", InputTrouble.NOT_WHOLE, Integer.MAX_VALUE);
      return Optional.empty();
    }
    if (FactRange.of(fact) == FactRange.SHARE && (value <= 0 || value >= 1)) {
      given.add("value", InputTrouble.NOT_A_SHARE);
      return Optional.empty();
    }
    return Optional.of(new FactValue.Figure(value));
  }

  private static String notBlank(Fields fields, String name) {
    Optional<String> text = fields.text(name);
    if (text.isPresent() && text.get().isBlank()) {
      fields.add(name, InputTrouble.BLANK);
    }
    return text.orElse("");
  }
}
