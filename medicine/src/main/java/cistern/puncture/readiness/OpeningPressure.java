package cistern.puncture.readiness;

import cistern.fact.Grounds;
import java.util.List;

/**
 * An opening pressure beside the ranges that fit position and age.
 *
 * @param cmWater cm[H2O]
 * @param mmMercury mm[Hg]
 * @param kiloPascal kPa
 * @param ranges one a source, never averaged
 * @param notes what keeps it from being compared
 */
public record OpeningPressure(
    double cmWater,
    double mmMercury,
    double kiloPascal,
    List<RangeAnswer> ranges,
    List<String> notes) {

  /** Copies the lists. */
  public OpeningPressure {
    ranges = List.copyOf(ranges);
    notes = List.copyOf(notes);
  }

  /**
   * One published range.
   *
   * @param code the name in files
   * @param lower cm[H2O]
   * @param upper cm[H2O]
   * @param verdict below, within or above; undetermined when position or age do not fit
   * @param grounds what it rests on
   */
  public record RangeAnswer(
      String code, double lower, double upper, cistern.finding.Verdict verdict, Grounds grounds) {}
}
