package cistern.urgent;

import cistern.finding.Printed;
import cistern.finding.UnitProfile;
import cistern.finding.WrittenUnit;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A number that a trigger reads. */
enum Quantity {
  LEUKOCYTES("leukocytes", "leukocytes", "%s leukocytes/µL", 0),
  NEUTROPHILS("neutrophils.csf", "neutrophils", "%s neutrophils/µL", 0),
  BLOOD_NEUTROPHILS("neutrophils.blood", "neutrophils in blood", "%s neutrophils/µL in blood", 0),
  NEUTROPHIL_SHARE("neutrophils.csf", "neutrophils", "%s %% neutrophils", 0),
  LYMPHOCYTE_SHARE("lymphocytes.csf", "lymphocytes", "%s %% lymphocytes", 0),
  MONONUCLEAR_SHARE(
      "lymphocytes.csf", "lymphocytes and monocytes", "%s %% lymphocytes and monocytes", 0),
  EOSINOPHIL_SHARE("eosinophils.csf", "eosinophils", "%s %% eosinophils", 0),
  EOSINOPHILS("eosinophils.csf", "eosinophils", "%s eosinophils/µL", 0),
  ERYTHROCYTES("erythrocytes", "erythrocytes", "%s erythrocytes/µL", 0),
  LAST_ERYTHROCYTES(
      "erythrocytes", "erythrocytes of the last tube", "%s erythrocytes/µL in the last tube", 0),
  PROTEIN("total-protein", "total protein", "protein %s mg/L", 0),
  GLUCOSE("glucose.csf", "CSF glucose", "CSF glucose %s mmol/L", 1),
  SERUM_GLUCOSE("glucose.serum", "serum glucose", "serum glucose %s mmol/L", 1),
  GLUCOSE_RATIO("glucose-ratio", "glucose ratio", "glucose ratio %s", 2),
  LACTATE("lactate", "lactate", "lactate %s mmol/L", 1),
  ALBUMIN_QUOTIENT("albumin-quotient", "albumin quotient", "albumin quotient %s·10⁻³", 1),
  KAPPA_INDEX("kappa-index", "κ index", "κ index %s", 1),
  PRESSURE("opening-pressure", "opening pressure", "opening pressure %s cmH₂O", 0),
  MEASLES("measles-antibody-index", "measles antibody index", "measles antibody index %s", 1),
  COMA_SCORE("glasgowComaScale", "coma score", "coma score %s", 0),
  AGE_YEARS("age", "age", "%s years", 0),
  AGE_DAYS("age", "age in days", "%s days", 0),
  BODY_MASS_INDEX("bmi", "body mass index", "body mass index %s", 0),
  ONSET_HOURS("onsetAt", "hours since onset", "%s hours after onset", 0),
  ONSET_DAYS("onsetAt", "days since onset", "%s days after onset", 0);

  /** A number of cells, with what follows the unit. */
  private static final Pattern COUNTED = Pattern.compile("%s (\\w+)/µL(.*)");

  private static final double PER_CENT = 100;
  private static final double THOUSAND = 1000;

  private final String finding;
  private final String term;
  private final String words;
  private final int places;

  Quantity(String finding, String term, String words, int places) {
    this.finding = finding;
    this.term = term;
    this.words = words;
    this.places = places;
  }

  /** The finding or the input that it is, as named in files. */
  String finding() {
    return finding;
  }

  /** The name in sentences. */
  String term() {
    return term;
  }

  /** A value in words, with its unit; beside a bound it differs from it. */
  String toText(double value, double bound, UnitProfile units) {
    Optional<WrittenUnit> unit = sample().flatMap(units::find);
    return unit.isEmpty() ? toText(value, bound) : inUnit(unit.get(), value, bound);
  }

  /** The words with another unit in the place of the usual one. */
  private String inUnit(WrittenUnit unit, double value, double bound) {
    String number =
        unit.isOfSameSize()
            ? number(value, bound)
            : value == bound ? unit.number(value) : unit.besideLimit(value, bound);
    Matcher counted = COUNTED.matcher(words);
    return counted.matches()
        ? unit.of(number, counted.group(1)) + counted.group(2)
        : words.substring(0, words.indexOf("%s")) + number + " " + unit.text();
  }

  /** What is measured, where it has a unit that a laboratory may choose. */
  private Optional<Sample> sample() {
    return switch (this) {
      case LEUKOCYTES, NEUTROPHILS, EOSINOPHILS -> Optional.of(Sample.csf(Analyte.LEUKOCYTES));
      case BLOOD_NEUTROPHILS -> Optional.of(Sample.blood(Analyte.LEUKOCYTES));
      case ERYTHROCYTES, LAST_ERYTHROCYTES -> Optional.of(Sample.csf(Analyte.ERYTHROCYTES));
      case PROTEIN -> Optional.of(Sample.csf(Analyte.TOTAL_PROTEIN));
      case GLUCOSE -> Optional.of(Sample.csf(Analyte.GLUCOSE));
      case SERUM_GLUCOSE -> Optional.of(Sample.serum(Analyte.GLUCOSE));
      case LACTATE -> Optional.of(Sample.csf(Analyte.LACTATE));
      case NEUTROPHIL_SHARE,
          LYMPHOCYTE_SHARE,
          MONONUCLEAR_SHARE,
          EOSINOPHIL_SHARE,
          GLUCOSE_RATIO,
          ALBUMIN_QUOTIENT,
          KAPPA_INDEX,
          PRESSURE,
          MEASLES,
          COMA_SCORE,
          AGE_YEARS,
          AGE_DAYS,
          BODY_MASS_INDEX,
          ONSET_HOURS,
          ONSET_DAYS ->
          Optional.empty();
    };
  }

  private String toText(double value, double bound) {
    return words.formatted(number(value, bound));
  }

  private String number(double value, double bound) {
    double scale =
        switch (this) {
          case NEUTROPHIL_SHARE, LYMPHOCYTE_SHARE, MONONUCLEAR_SHARE, EOSINOPHIL_SHARE -> PER_CENT;
          case ALBUMIN_QUOTIENT -> THOUSAND;
          default -> 1;
        };
    for (int digits = places; digits < places + 3; digits++) {
      String text = Printed.decimals(value * scale, digits);
      if (value == bound || !text.equals(Printed.decimals(bound * scale, digits))) {
        return text;
      }
    }
    return Printed.decimals(value * scale, places);
  }
}
