package cistern.clinic.facts;

import cistern.fact.UnitKey;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A rule as people call it, made of its key: what it is about, then what of it is decided. */
final class RuleName {

  /** Parts of keys that are no words of their own. */
  private static final Map<String, String> PARTS =
      Map.of(
          "upper", "upper limit",
          "lower", "lower limit",
          "borderline", "grey zone from",
          "cv", "coefficient of variation",
          "cut-off", "cut-off",
          "csf", "CSF");

  private RuleName() {}

  /** {@code κ index, upper limit} of {@code kappa-index.upper}. */
  static String of(String key) {
    Optional<UnitKey> ofLaboratory =
        UnitKey.parse(key).filter(unit -> unit.laboratory().isPresent());
    return ofLaboratory
        .map(unit -> name(unit.ofHouse()) + ", of " + unit.laboratory().orElseThrow())
        .orElseGet(() -> name(key));
  }

  private static String name(String key) {
    String name =
        Arrays.stream(key.split("\\.", -1)).map(RuleName::word).collect(Collectors.joining(", "));
    char first = name.charAt(0);
    return first < 'a' || first > 'z' ? name : Character.toUpperCase(first) + name.substring(1);
  }

  private static String word(String part) {
    return FindingCode.parse(part)
        .map(FindingCode::term)
        .or(() -> Analyte.parse(part).map(Analyte::term))
        .orElseGet(() -> PARTS.getOrDefault(part, part.replace('-', ' ')));
  }
}
