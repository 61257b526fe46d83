package cistern.exchange.workup;

import cistern.criteria.Count;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Item.Kind;
import cistern.criteria.Presentation;
import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.measurement.Answer;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;

/** Reads the clinical evidence of a work-up; what is missing is unknown. */
final class EvidenceReader {

  private static final Set<Item> REGIONS =
      EnumSet.of(
          Item.PERIVENTRICULAR,
          Item.CORTICAL_JUXTACORTICAL,
          Item.INFRATENTORIAL,
          Item.SPINAL_CORD,
          Item.OPTIC_NERVE);

  private EvidenceReader() {}

  static Evidence read(Fields workup) {
    return workup.object("evidence").map(EvidenceReader::evidence).orElse(Evidence.UNKNOWN);
  }

  private static Evidence evidence(Fields evidence) {
    Presentation presentation =
        evidence
            .word("presentation", Presentation::parse, presentations())
            .orElse(Presentation.UNKNOWN);
    Map<Item, Answer> answers = new EnumMap<>(Item.class);
    Optional<Fields> regions = evidence.object("regions");
    for (Item item : Item.values()) {
      if (item.kind() == Kind.ANSWER || item.kind() == Kind.LESION) {
        Optional<Fields> home = REGIONS.contains(item) ? regions : Optional.of(evidence);
        home.filter(h -> h.isGiven(item.code()))
            .ifPresent(h -> answers.put(item, h.answer(item.code())));
      }
    }
    regions.ifPresent(Fields::checkNoOthers);
    evidence.keep("prior");
    Count attacks = count(evidence, "attacks");
    Count lesions = count(evidence, "objectiveLesions");
    evidence.checkNoOthers();
    return new Evidence(presentation, attacks, lesions, answers);
  }

  private static List<String> presentations() {
    return Stream.of(Presentation.values()).map(Presentation::code).toList();
  }

  /** A number, {@code {"atLeast": 1}}, or the word unknown. */
  private static Count count(Fields evidence, String name) {
    Optional<Json> value = evidence.value(name);
    if (value.isEmpty()) {
      return Count.UNKNOWN;
    }
    return switch (value.get()) {
      case Json.Structure structure ->
          evidence.object(name).map(EvidenceReader::atLeast).orElse(Count.UNKNOWN);
      case Json.Text text -> {
        if (!text.value().equals("unknown")) {
          evidence.add(name, InputTrouble.NOT_A_WORD, "a number, { \"atLeast\": 1 }, unknown");
        }
        yield Count.UNKNOWN;
      }
      case Json.Sequence other -> number(evidence, name);
      case Json.Numeral other -> number(evidence, name);
      case Json.Truth other -> number(evidence, name);
      case Json.Nothing other -> number(evidence, name);
      case Json.NotJson other -> Count.UNKNOWN;
    };
  }

  private static Count number(Fields evidence, String name) {
    OptionalInt count = evidence.count(name);
    return count.isPresent() ? Count.of(count.getAsInt()) : Count.UNKNOWN;
  }

  private static Count atLeast(Fields bound) {
    bound.checkGiven("atLeast");
    OptionalInt least = bound.count("atLeast");
    bound.checkNoOthers();
    return least.isPresent() ? Count.atLeast(least.getAsInt()) : Count.UNKNOWN;
  }
}
