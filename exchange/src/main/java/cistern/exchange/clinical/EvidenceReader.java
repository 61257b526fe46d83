package cistern.exchange.clinical;

import cistern.criteria.Count;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.measurement.Answer;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Reads what is stated for the criteria. */
final class EvidenceReader {

  private static final String UNKNOWN = "unknown";
  private static final String AT_LEAST = "atLeast";

  /** The regions stand in an object of their own; the count of cord lesions beside it. */
  private static final List<Item> REGIONS =
      List.of(
          Item.PERIVENTRICULAR,
          Item.CORTICAL_JUXTACORTICAL,
          Item.INFRATENTORIAL,
          Item.SPINAL_CORD,
          Item.OPTIC_NERVE);

  private EvidenceReader() {}

  static Evidence read(Fields fields) {
    Map<Item, Answer> answers = new EnumMap<>(Item.class);
    for (Item item : Item.values()) {
      if (isStatedBeside(item)) {
        answer(fields, item, answers);
      }
    }
    Optional<Fields> regions = fields.object("regions");
    regions.ifPresent(
        in -> {
          REGIONS.forEach(item -> answer(in, item, answers));
          in.checkNoOthers();
        });
    Presentation presentation =
        fields
            .word("presentation", Presentation::parse, presentations())
            .orElse(Presentation.UNKNOWN);
    return new Evidence(
        presentation, count(fields, Item.ATTACKS), count(fields, Item.OBJECTIVE_LESIONS), answers);
  }

  private static boolean isStatedBeside(Item item) {
    return switch (item.kind()) {
      case ANSWER -> true;
      case LESION -> !REGIONS.contains(item);
      case PRESENTATION, COUNT, FLUID -> false;
    };
  }

  private static void answer(Fields fields, Item item, Map<Item, Answer> answers) {
    if (fields.isGiven(item.code())) {
      answers.put(item, fields.answer(item.code()));
    }
  }

  private static List<String> presentations() {
    return Stream.of(Presentation.values()).map(Presentation::code).toList();
  }

  private static Count count(Fields fields, Item item) {
    Optional<Json> given = fields.value(item.code());
    if (given.isEmpty()) {
      return Count.UNKNOWN;
    }
    if (given.get() instanceof Json.Text(String word)) {
      if (!word.equals(UNKNOWN)) {
        fields.add(item.code(), InputTrouble.ILL_FORMED, "a count, { \"atLeast\": 1 } or unknown");
      }
      return Count.UNKNOWN;
    }
    if (given.get() instanceof Json.Structure) {
      return fields.object(item.code()).map(EvidenceReader::atLeast).orElse(Count.UNKNOWN);
    }
    OptionalInt number = fields.count(item.code());
    return number.isPresent() ? Count.of(number.getAsInt()) : Count.UNKNOWN;
  }

  private static Count atLeast(Fields bound) {
    bound.checkGiven(AT_LEAST);
    OptionalInt least = bound.count(AT_LEAST);
    bound.checkNoOthers();
    return least.isPresent() ? Count.atLeast(least.getAsInt()) : Count.UNKNOWN;
  }
}
