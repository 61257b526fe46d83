package cistern.puncture.drug;

import cistern.fact.Facts;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Reads a dose from the text beside a name: amount, unit, times a day, route. */
final class DoseText {

  private static final Pattern SCHEME =
      Pattern.compile("(?<![\\d.,-])([0-3½])-([0-3½])-([0-3½])(?:-([0-3½]))?(?![\\d-])");
  private static final Pattern TIMES =
      Pattern.compile(
          "(?<![\\d.,])([1-4])\\s*(?:[x×*](?!\\p{L}{4})"
              + "|(?:mal|fois|veces|volte|times|raz|razy|keer|dd|vezes|kez|раз|раза)(?!\\p{L}))");
  private static final Pattern EVERY =
      Pattern.compile(
          "(?:q|cada|ogni|alle|every|toutes les|c/|/)\\s*(6|8|12|24)\\s*"
              + "(?:h|ore|horas|std|stunden|heures|hours)(?!\\p{L}{4})");
  private static final Pattern TIMES_BEHIND =
      Pattern.compile("(?<=[a-z)\\s])[x×*]\\s*([1-4])(?!\\d)");
  private static final Pattern DATE =
      Pattern.compile(
          "\\d{4}-\\d\\d(?:-\\d\\d)?|\\d{1,2}[./]\\d{1,2}[./]\\d{2,4}|\\b(?:19|20)\\d\\d\\b|\\d{1,2}:\\d\\d");
  private static final Pattern AMOUNT =
      Pattern.compile(
          "(\\d{1,3}(?:[. ’']\\d{3})+|\\d+(?:[.,]\\d+)?)\\s*"
              + "(mg|milligram\\p{L}*|mcg|μg|ug|g|gr|ml|milliliter|iu|ie|ui|units?|u|e|jm|einheiten|unites|unidades|ме|мг|мл)?"
              + "(?![\\p{L}])(\\s*(?:/|pro|per|par|por)\\s*kg)?");
  private static final Pattern THOUSANDS = Pattern.compile("\\d{1,3}(?:[. ’']\\d{3})+");
  private static final Set<String> INTERNATIONAL =
      Set.of(
          "iu",
          "ie",
          "ui",
          "unit",
          "units",
          "u",
          "e",
          "jm",
          "einheiten",
          "unites",
          "unidades",
          "ме");
  private static final double MILLIGRAMS_PER_GRAM = 1000;
  private static final double HOURS_PER_DAY = 24;

  private static final List<String> LISTS =
      List.of("once", "twice", "thrice", "as-needed", "route-iv", "route-sc");
  private static final int LONGEST = 4;

  private final Map<String, Set<String>> lists;

  DoseText(Facts facts) {
    lists =
        LISTS.stream().collect(Collectors.toUnmodifiableMap(l -> l, list -> names(facts, list)));
  }

  Dose read(String typed) {
    DrugText text = DrugText.of(typed);
    OptionalDouble times = times(text);
    String rest = text.plain();
    for (Pattern pattern : List.of(DATE, SCHEME, EVERY, TIMES, TIMES_BEHIND)) {
      rest = pattern.matcher(rest).replaceAll(" ");
    }
    return new Dose(amount(rest), times, route(text), hasAny(text, "as-needed"));
  }

  private OptionalDouble times(DrugText text) {
    Matcher scheme = SCHEME.matcher(text.plain());
    if (scheme.find()) {
      long given =
          IntStream.rangeClosed(1, scheme.groupCount())
              .mapToObj(scheme::group)
              .filter(g -> g != null && !g.equals("0"))
              .count();
      return given == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) given);
    }
    Matcher every = EVERY.matcher(text.plain());
    if (every.find()) {
      return OptionalDouble.of(HOURS_PER_DAY / Double.parseDouble(every.group(1)));
    }
    for (Pattern pattern : List.of(TIMES, TIMES_BEHIND)) {
      Matcher matcher = pattern.matcher(text.plain());
      if (matcher.find()) {
        return OptionalDouble.of(Double.parseDouble(matcher.group(1)));
      }
    }
    List<String> words = List.of("twice", "thrice", "once");
    double[] counts = {2, 3, 1};
    for (int i = 0; i < counts.length; i++) {
      if (hasAny(text, words.get(i))) {
        return OptionalDouble.of(counts[i]);
      }
    }
    return OptionalDouble.empty();
  }

  private Dose.Route route(DrugText text) {
    if (hasAny(text, "route-sc")) {
      return Dose.Route.SKIN;
    }
    return hasAny(text, "route-iv") ? Dose.Route.VEIN : Dose.Route.UNKNOWN;
  }

  private static Dose.Amount amount(String rest) {
    List<MatchResult> all = AMOUNT.matcher(rest).results().toList();
    return all.stream()
        .filter(m -> m.group(2) != null)
        .findFirst()
        .or(() -> all.stream().findFirst())
        .map(DoseText::amount)
        .orElse(Dose.Amount.UNKNOWN);
  }

  private static Dose.Amount amount(MatchResult match) {
    String number = match.group(1);
    String unit = match.group(2) == null ? "" : match.group(2);
    boolean isThousands = INTERNATIONAL.contains(unit) && THOUSANDS.matcher(number).matches();
    double value =
        Double.parseDouble(
            isThousands
                ? number.replaceAll("[. ’']", "")
                : number.replaceAll("[ ’']", "").replace(',', '.'));
    boolean isPerKg = match.group(3) != null;
    if (unit.equals("g") || unit.equals("gr")) {
      return new Dose.Amount(
          OptionalDouble.of(value * MILLIGRAMS_PER_GRAM), Dose.Unit.MILLIGRAM, isPerKg);
    }
    return new Dose.Amount(OptionalDouble.of(value), unit(unit), isPerKg);
  }

  private static Dose.Unit unit(String unit) {
    if (INTERNATIONAL.contains(unit)) {
      return Dose.Unit.INTERNATIONAL_UNIT;
    }
    return switch (unit) {
      case "" -> Dose.Unit.NONE;
      case "ml", "milliliter", "мл" -> Dose.Unit.MILLILITRE;
      default -> Dose.Unit.MILLIGRAM;
    };
  }

  /** Whether any word of a list stands in the text. */
  private boolean hasAny(DrugText text, String list) {
    Set<String> wanted = lists.getOrDefault(list, Set.of());
    for (int i = 0; i < text.words().size(); i++) {
      for (int count = 1; count <= LONGEST && i + count <= text.words().size(); count++) {
        if (wanted.contains(text.joined(i, count))) {
          return true;
        }
      }
    }
    return false;
  }

  /** The words of a list, written together. */
  static Set<String> names(Facts facts, String list) {
    return Arrays.stream(facts.word("typed." + list + ".names").split(", ", -1))
        .map(DrugText::of)
        .map(t -> t.joined(0, t.words().size()))
        .collect(Collectors.toSet());
  }
}
