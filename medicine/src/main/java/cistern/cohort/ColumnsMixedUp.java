package cistern.cohort;

import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Two columns of a cohort that stand in each other's place, or one that holds something else.
 *
 * @param columns the names of the columns
 * @param text what is odd, and what to do
 */
public record ColumnsMixedUp(List<String> columns, String text) {

  private static final double MIDDLE = 0.5;
  private static final int PER_CENT = 100;
  private static final double[] SLIPS = {10, 100, 1_000, 0.1, 0.01, 0.001};

  /** In the middle of any cohort the first is more than the second. */
  private static final List<List<Sample>> ORDER =
      List.of(
          List.of(Sample.serum(Analyte.ALBUMIN), Sample.serum(Analyte.IGG)),
          List.of(Sample.serum(Analyte.IGG), Sample.serum(Analyte.IGA)),
          List.of(Sample.serum(Analyte.IGG), Sample.serum(Analyte.IGM)),
          List.of(Sample.serum(Analyte.IGA), Sample.serum(Analyte.IGM)),
          List.of(Sample.csf(Analyte.ALBUMIN), Sample.csf(Analyte.IGG)),
          List.of(Sample.csf(Analyte.IGG), Sample.csf(Analyte.IGA)),
          List.of(Sample.csf(Analyte.IGG), Sample.csf(Analyte.IGM)),
          List.of(Sample.csf(Analyte.TOTAL_PROTEIN), Sample.csf(Analyte.ALBUMIN)),
          List.of(Sample.serum(Analyte.TOTAL_PROTEIN), Sample.serum(Analyte.ALBUMIN)),
          List.of(Sample.csf(Analyte.GLUCOSE), Sample.csf(Analyte.LACTATE)),
          List.of(Sample.blood(Analyte.ERYTHROCYTES), Sample.csf(Analyte.ERYTHROCYTES)),
          List.of(Sample.blood(Analyte.ERYTHROCYTES), Sample.blood(Analyte.LEUKOCYTES)));

  /** Copies the names. */
  public ColumnsMixedUp {
    columns = List.copyOf(columns);
  }

  /** What is mixed up in some rows; nothing where they are too few to tell. */
  public static List<ColumnsMixedUp> check(ColumnProfile profile, Facts facts) {
    return new Check(profile, facts).all();
  }

  private record Check(ColumnProfile profile, Facts facts) {

    private List<ColumnsMixedUp> all() {
      List<ColumnsMixedUp> found = new ArrayList<>();
      for (Analyte analyte : Analyte.values()) {
        order(Sample.serum(analyte), Sample.csf(analyte)).ifPresent(found::add);
      }
      ORDER.forEach(pair -> order(pair.getFirst(), pair.getLast()).ifPresent(found::add));
      profile.values().keySet().forEach(code -> implausible(code).ifPresent(found::add));
      ages().ifPresent(found::add);
      sexes().ifPresent(found::add);
      return found;
    }

    private boolean isEnough(long count) {
      return count >= facts.number("cohort.columns.people");
    }

    private OptionalDouble middle(String code) {
      Spectrum spectrum = profile.values().getOrDefault(code, Spectrum.NONE);
      return isEnough(spectrum.size()) ? spectrum.quantile(MIDDLE) : OptionalDouble.empty();
    }

    private Optional<ColumnsMixedUp> order(Sample more, Sample less) {
      OptionalDouble high = middle(more.code());
      OptionalDouble low = middle(less.code());
      if (high.isEmpty() || low.isEmpty() || high.getAsDouble() >= low.getAsDouble()) {
        return Optional.empty();
      }
      return Optional.of(
          new ColumnsMixedUp(
              List.of(more.code(), less.code()),
              ("%s and %s look exchanged: the middle value of %s is %s, that of %s is %s; in people it"
                      + " is the other way round.")
                  .formatted(
                      more.code(),
                      less.code(),
                      more.code(),
                      amount(high.getAsDouble(), more),
                      less.code(),
                      amount(low.getAsDouble(), less))));
    }

    private static String amount(double value, Sample sample) {
      return Printed.significant(value) + " " + sample.analyte().unit().ucum();
    }

    private Optional<ColumnsMixedUp> implausible(String code) {
      Spectrum spectrum = profile.values().getOrDefault(code, Spectrum.NONE);
      double share = (double) profile.implausible().getOrDefault(code, 0L) / spectrum.size();
      if (!isEnough(spectrum.size()) || share <= facts.number("cohort.columns.implausible")) {
        return Optional.empty();
      }
      double middle = spectrum.quantile(MIDDLE).orElseThrow();
      return Optional.of(
          new ColumnsMixedUp(
              List.of(code),
              ("%s holds something else or another unit: %d of 100 values are implausible, the"
                      + " middle one is %s%s.")
                  .formatted(
                      code,
                      Math.round(PER_CENT * share),
                      Printed.significant(middle),
                      slip(code, middle))));
    }

    /** Which factor would bring the middle value nearest to the middle of what is plausible. */
    private String slip(String code, double middle) {
      double lower = facts.number("plausible." + code + ".lower");
      double upper = facts.number("plausible." + code + ".upper");
      double centre = Math.sqrt(lower * upper);
      return Arrays.stream(SLIPS)
          .filter(factor -> middle * factor >= lower && middle * factor <= upper)
          .boxed()
          .min(Comparator.comparingDouble(factor -> Math.abs(Math.log(middle * factor / centre))))
          .map(factor -> "; " + Printed.significant(factor) + " times as much would be plausible")
          .orElse("");
    }

    private Optional<ColumnsMixedUp> ages() {
      OptionalDouble middle = profile.ages().quantile(MIDDLE);
      boolean isOdd =
          isEnough(profile.ages().size())
              && middle.isPresent()
              && middle.getAsDouble() > facts.number("cohort.columns.age.upper");
      return isOdd
          ? Optional.of(
              new ColumnsMixedUp(
                  List.of("ageYears"),
                  "ageYears holds something else: the middle value is "
                      + Printed.significant(middle.getAsDouble())
                      + " years."))
          : Optional.empty();
    }

    private Optional<ColumnsMixedUp> sexes() {
      boolean isOdd =
          isEnough(profile.sexes())
              && profile.oddSexes() > facts.number("cohort.columns.implausible") * profile.sexes();
      return isOdd
          ? Optional.of(
              new ColumnsMixedUp(List.of("sex"), "sex holds numbers: another column stands there."))
          : Optional.empty();
    }
  }
}
