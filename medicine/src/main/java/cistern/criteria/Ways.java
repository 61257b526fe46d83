package cistern.criteria;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Ways to meet criteria, or to miss them, as part of a sentence. */
public final class Ways {

  /** More ways than these are counted, not told: the file has all. */
  private static final int MOST = 3;

  private Ways() {}

  /**
   * All ways in words; what those that are told have in common is said once.
   *
   * @param ways at least one, each of at least one item
   * @param words of an item
   */
  public static String say(List<List<Item>> ways, Function<Item, String> words) {
    List<List<Item>> told = ways.subList(0, Math.min(MOST, ways.size()));
    List<Item> common = common(told);
    String each =
        told.stream()
            .map(way -> way.stream().filter(item -> !common.contains(item)).toList())
            .map(rest -> and(rest, words))
            .collect(Collectors.joining(", or "));
    String start = common.isEmpty() ? "" : and(common, words) + ", together with ";
    return start + each + more(ways.size() - told.size());
  }

  /** What all have in common, as long as each has something of its own. */
  private static List<Item> common(List<List<Item>> ways) {
    List<Item> common = new ArrayList<>(ways.getFirst());
    ways.forEach(common::retainAll);
    boolean isAll = ways.stream().anyMatch(way -> common.containsAll(way));
    return isAll ? List.of() : common;
  }

  private static String and(List<Item> items, Function<Item, String> words) {
    List<String> all = items.stream().map(words).toList();
    String last = all.getLast();
    return all.size() == 1
        ? last
        : String.join(", ", all.subList(0, all.size() - 1)) + " and " + last;
  }

  private static String more(int others) {
    return switch (others) {
      case 0 -> "";
      case 1 -> ", or in one other way";
      default -> ", or in %d other ways".formatted(others);
    };
  }
}
