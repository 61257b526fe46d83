package cistern.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * An invented work-up by chance: each part may be missing, unknown, censored or odd. Half lie near
 * the limits of verdicts, where a change would show.
 */
final class RandomWorkup {

  private final SplittableRandom random;

  private RandomWorkup(SplittableRandom random) {
    this.random = random;
  }

  /** A work-up file as text; the same for the same seed, for ever. */
  static String of(SplittableRandom random, String id) {
    RandomWorkup workup = new RandomWorkup(random);
    List<String> fields = new ArrayList<>();
    fields.add("\"workup\": 1");
    fields.add("\"id\": \"" + id + "\"");
    fields.add("\"person\": " + workup.person());
    fields.add("\"draws\": " + workup.draws());
    fields.add("\"results\": [" + String.join(", ", workup.results()) + "]");
    workup.bands().ifPresent(bands -> fields.add("\"bands\": " + bands));
    fields.add("\"context\": " + workup.context());
    fields.add("\"serology\": " + workup.serology());
    if (workup.chance(0.8)) {
      fields.add("\"evidence\": " + workup.evidence());
    }
    return "{" + String.join(", ", fields) + "}";
  }

  private String person() {
    return chance(0.9)
        ? "{\"id\": \"p\", \"ageYears\": " + random.nextInt(1, 90) + "}"
        : "{\"id\": \"p\"}";
  }

  private String draws() {
    String csf =
        "\"at\": \"2034-03-02T10:15:00Z\", \"appearance\": \""
            + one("clear", "clear", "clear", "bloody", "xanthochromic")
            + "\"";
    if (chance(0.3)) {
      csf +=
          ", \"openingPressure\": {\"value\": "
              + random.nextInt(4, 40)
              + ", \"unit\": \"cm[H2O]\"}";
    }
    String serum =
        chance(0.85)
            ? ", \"serum\": {\"at\": \"2034-03-0" + one("2", "2", "2", "3", "5") + "T11:00:00Z\"}"
            : "";
    return "{\"csf\": {" + csf + "}" + serum + "}";
  }

  private List<String> results() {
    List<String> results = new ArrayList<>();
    pair(results, "albumin", 260, 42_000, "mg/L");
    pair(results, "igg", 40, 11_000, "mg/L");
    pair(results, "iga", 3, 2_000, "mg/L");
    pair(results, "igm", 0.6, 1_100, "mg/L");
    pair(results, "kappa-flc", 0.6, 13, "mg/L");
    pair(results, "lambda-flc", 0.4, 14, "mg/L");
    pair(results, "glucose", 3, 5.5, "mmol/L");
    if (chance(0.25)) {
      for (String specific :
          List.of("measles-igg", "rubella-igg", "varicella-zoster-igg", "borrelia-igg")) {
        pair(results, specific, 5, 900, "[arb'U]/mL");
      }
    }
    alone(results, "lactate", "csf", 1.9, "mmol/L");
    alone(results, "total-protein", "csf", 480, "mg/L");
    alone(results, "leukocytes", "csf", 7, "/uL");
    alone(results, "erythrocytes", "csf", 60, "/uL");
    if (chance(0.2)) {
      alone(results, "erythrocytes", "blood", 4_600_000, "/uL");
      alone(results, "leukocytes", "blood", 7_000, "/uL");
      results.add(result("hematocrit", "blood", "\"value\": 0.41", "1"));
    }
    if (chance(0.3)) {
      results.add(result("neutrophils", "csf", "\"value\": " + random.nextInt(0, 10) / 10.0, "1"));
    }
    return results;
  }

  private void pair(List<String> results, String analyte, double csf, double serum, String unit) {
    if (chance(0.75)) {
      alone(results, analyte, "csf", csf, unit);
      alone(results, analyte, "serum", serum, unit);
    }
  }

  private void alone(List<String> results, String analyte, String in, double middle, String unit) {
    if (chance(0.93)) {
      double width = chance(0.5) ? 0.35 : 1.2;
      double value = middle * Math.exp(width * (random.nextDouble() + random.nextDouble() - 1));
      String number = String.format(Locale.ROOT, "%.3g", value);
      results.add(
          result(
              analyte,
              in,
              one("value", "value", "value", "value", "value", "value", "below", "above"),
              number,
              unit));
    }
  }

  private static String result(String analyte, String in, String kind, String number, String unit) {
    String plain = new BigDecimal(number).toPlainString();
    return result(analyte, in, "\"" + kind + "\": " + plain, unit);
  }

  private static String result(String analyte, String in, String value, String unit) {
    return "{\"analyte\": \"%s\", \"in\": \"%s\", %s, \"unit\": \"%s\"}"
        .formatted(analyte, in, value, unit);
  }

  private Optional<String> bands() {
    return switch (random.nextInt(5)) {
      case 0 -> Optional.empty();
      case 1 -> Optional.of("{\"pattern\": " + random.nextInt(1, 6) + "}");
      case 2 -> Optional.of("{\"result\": \"" + one("positive", "negative") + "\"}");
      default ->
          Optional.of(
              "{\"csfOnly\": %d, \"shared\": %d, \"serumOnly\": %d}"
                  .formatted(random.nextInt(0, 9), random.nextInt(0, 3), random.nextInt(0, 2)));
    };
  }

  private String context() {
    return "{\"immunoglobulinInfusion\": \"%s\", \"plasmaExchange\": \"%s\", \"corticosteroids\": \"%s\"}"
        .formatted(rarely(), rarely(), rarely());
  }

  private String serology() {
    return chance(0.5)
        ? "[{\"test\": \"%s\", \"in\": \"serum\", \"result\": \"%s\"}]"
            .formatted(one("mog-igg", "aqp4-igg"), one("negative", "negative", "positive"))
        : "[]";
  }

  private String evidence() {
    String presentation =
        one(
            "attack",
            "attack",
            "attack",
            "progression",
            "none",
            "non-specific",
            "atypical",
            "unknown");
    int attacks = presentation.equals("attack") ? random.nextInt(1, 3) : 0;
    String prior =
        chance(0.6)
            ? ", \"prior\": {\"ms\": [0.4, 0.6], \"usesMri\": \"%s\"}".formatted(three())
            : "";
    return """
        {"noBetterExplanation": "%s", "presentation": "%s", "attacks": %d, "objectiveLesions": %d,
         "historicalAttack": "%s", "regions": {"periventricular": "%s", "corticalJuxtacortical": "%s",
         "infratentorial": "%s", "spinalCord": "%s", "opticNerve": "%s"},
         "newOrMixedEnhancingLesions": "%s", "centralVeinSignSelectSix": "%s",
         "paramagneticRimLesion": "%s", "progressionTwelveMonths": "%s"%s}"""
        .formatted(
            one("yes", "yes", "unknown", "no"),
            presentation,
            attacks,
            random.nextInt(0, 3),
            three(),
            three(),
            three(),
            three(),
            three(),
            three(),
            three(),
            three(),
            three(),
            presentation.equals("progression") ? "yes" : "no",
            prior);
  }

  private String three() {
    return one("yes", "no", "unknown");
  }

  private String rarely() {
    return one("no", "no", "no", "unknown", "yes");
  }

  private String one(String... of) {
    return of[random.nextInt(of.length)];
  }

  private boolean chance(double probability) {
    return random.nextDouble() < probability;
  }
}
