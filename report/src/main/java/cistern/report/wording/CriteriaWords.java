package cistern.report.wording;

import cistern.criteria.CriteriaResult;
import cistern.criteria.DisseminationInTime;
import cistern.criteria.Item;
import cistern.criteria.PunctureEffect;
import cistern.criteria.Ways;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What an edition of the criteria says, in one sentence. */
public final class CriteriaWords {

  private CriteriaWords() {}

  /** Edition, verdict, what would settle it, and why. */
  public static String of(CriteriaResult result) {
    String time =
        result.disseminationInTime().map(t -> "; dissemination in time: " + basis(t)).orElse("");
    String note = result.note().isEmpty() ? "" : "; " + result.note();
    if (result.isWaiting()) {
      return "%s: undetermined%s.".formatted(result.edition(), note);
    }
    return "%s: %s%s%s%s%s."
        .formatted(
            result.edition(),
            result.verdict().word().replace('-', ' '),
            time,
            ways("; would be met by ", result.missing(), Item::term),
            ways("; not met if there is ", result.missingAgainst(), CriteriaWords::without),
            note);
  }

  private static String without(Item item) {
    if (item == Item.NO_BETTER_EXPLANATION) {
      return "another explanation that fits better";
    }
    return item == Item.CSF_POSITIVE
        ? "neither oligoclonal bands nor a raised κ index"
        : "no " + item.term();
  }

  private static String basis(DisseminationInTime basis) {
    return switch (basis) {
      case ATTACK -> "a further attack";
      case MRI -> "imaging";
      case OCB_SUBSTITUTE -> "CSF-only bands in its place";
    };
  }

  private static String ways(String title, List<List<Item>> ways, Function<Item, String> words) {
    return ways.isEmpty() ? "" : title + Ways.say(ways, words);
  }

  /** What positive against negative fluid changes in each edition. */
  public static String puncture(Map<String, PunctureEffect> effects) {
    return "What positive against negative fluid changes: "
        + effects.entrySet().stream()
            .map(e -> "%s %s".formatted(e.getKey(), e.getValue().word().replace('-', ' ')))
            .collect(Collectors.joining(", "))
        + ".";
  }
}
