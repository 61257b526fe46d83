package cistern.clinic.launch;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.random.RandomGenerator;

/**
 * Invented work-ups drawn by chance: values around those of the examples, draws within some years.
 * They look like work-ups and say nothing about anybody.
 *
 * @param random from a seed
 * @param now the time that the last of them happened at
 */
record DrawnCases(RandomGenerator random, Instant now) {

  /** About how many people have each a second puncture among them. */
  private static final int PUNCTURES_OF_ONE = 2;

  private static final double SPREAD = 0.35;
  private static final int LONGEST_AGO_DAYS = 2000;
  private static final int MOST_BANDS = 12;
  private static final int YOUNGEST = 18;
  private static final int AGES = 60;

  /** The text of one work-up. */
  String workup(int number) {
    Instant drawn =
        now.minus(
                Duration.ofMinutes(random.nextLong(Duration.ofDays(LONGEST_AGO_DAYS).toMinutes())))
            .truncatedTo(ChronoUnit.MINUTES);
    int own = random.nextInt(MOST_BANDS);
    return """
    {"workup":1,"id":"inv-%06d","invented":true,"question":"Invented question %d: bands?",
    "person":{"id":"inv-p-%06d","ageYears":%d,"sex":"%s"},
    "draws":{"csf":{"at":"%s","site":"lumbar"},"serum":{"at":"%s"}},
    "results":[%s,%s,%s,%s,%s,%s,%s],
    "bands":{"csfOnly":%d,"shared":%d,"serumOnly":0},
    "evidence":{"presentation":"attack","attacks":1,"objectiveLesions":1}}
    """
        .formatted(
            number,
            number,
            number / PUNCTURES_OF_ONE,
            YOUNGEST + random.nextInt(AGES),
            random.nextBoolean() ? "female" : "male",
            drawn,
            drawn.plus(Duration.ofMinutes(random.nextInt(90))),
            result("albumin", "csf", 220, "mg/L"),
            result("albumin", "serum", 42, "g/L"),
            result("igg", "csf", 45, "mg/L"),
            result("igg", "serum", 11, "g/L"),
            result("kappa-flc", "csf", 1.5, "mg/L"),
            result("kappa-flc", "serum", 12, "mg/L"),
            result("leukocytes", "csf", 6, "/uL"),
            own,
            random.nextInt(3));
  }

  private String result(String analyte, String in, double middle, String unit) {
    double value = middle * Math.exp(SPREAD * random.nextGaussian());
    return "{\"analyte\":\"%s\",\"in\":\"%s\",\"value\":%s,\"unit\":\"%s\"}"
        .formatted(analyte, in, String.format(Locale.ROOT, "%.3g", value), unit);
  }
}
