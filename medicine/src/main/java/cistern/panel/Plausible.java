package cistern.panel;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import java.util.Optional;

/**
 * The ranges outside which a value, or a quotient of two, is more likely a slip than a disease.
 * Ends belong to the range; a censored value is implausible only when all of it lies outside.
 */
final class Plausible {

  private static final String LEAST_PART = "plausible.albumin-of-protein.lower";
  private static final String MOST_PART = "plausible.albumin-of-protein.upper";

  private final Facts facts;

  Plausible(Facts facts) {
    this.facts = facts;
  }

  /** Whether an analyte is watched at all. */
  boolean isWatched(Analyte analyte) {
    return switch (analyte.family()) {
      case IMMUNOGLOBULIN, LIGHT_CHAIN -> true;
      case PROTEIN -> analyte == Analyte.ALBUMIN;
      case METABOLITE, CELLS, FRACTION, SPECIFIC_ANTIBODY -> false;
    };
  }

  /** Whether one value lies in its range; light chains have none. */
  boolean isAllowed(Sample sample, Interval value) {
    String key = key(sample);
    return facts.find(key + ".lower").isEmpty()
        || overlaps(value, facts.number(key + ".lower"), facts.number(key + ".upper"));
  }

  /** Whether both values and their quotient lie in their ranges. */
  boolean isAllowed(Analyte analyte, Optional<Interval> csf, Optional<Interval> serum) {
    boolean each =
        csf.map(v -> isAllowed(Sample.csf(analyte), v)).orElse(true)
            && serum.map(v -> isAllowed(Sample.serum(analyte), v)).orElse(true);
    return each && (csf.isEmpty() || serum.isEmpty() || isQuotientAllowed(csf.get(), serum.get()));
  }

  private boolean isQuotientAllowed(Interval csf, Interval serum) {
    return serum.isZero()
        || overlaps(
            csf.dividedBy(serum),
            facts.number("plausible.quotient.lower"),
            facts.number("plausible.quotient.upper"));
  }

  /** Whether CSF albumin can be a part of the total protein: no more than it, and no small part. */
  boolean isPartAllowed(Interval albumin, Interval protein) {
    return overlaps(albumin.dividedBy(protein), facts.number(LEAST_PART), facts.number(MOST_PART));
  }

  /** What the share of albumin in the protein rests on. */
  Grounds partGrounds() {
    return facts.grounds(LEAST_PART, MOST_PART);
  }

  /** What the ranges of an analyte rest on. */
  Grounds grounds(Analyte analyte) {
    Grounds quotient = facts.grounds("plausible.quotient.lower", "plausible.quotient.upper");
    String csf = key(Sample.csf(analyte));
    return facts.find(csf + ".lower").isPresent()
        ? facts.grounds(csf + ".lower", csf + ".upper").and(quotient)
        : quotient;
  }

  private static String key(Sample sample) {
    return "plausible." + sample.code();
  }

  private static boolean overlaps(Interval value, double lower, double upper) {
    return value.upper() >= lower && value.lower() <= upper;
  }
}
