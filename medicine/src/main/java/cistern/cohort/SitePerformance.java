package cistern.cohort;

import cistern.finding.FindingCode;
import java.util.Optional;

/**
 * How well one finding told a site's people with a diagnosis from its others.
 *
 * @param code the finding
 * @param with how many people with the diagnosis had a value
 * @param without how many others had one
 * @param needed how many are needed of each
 * @param told how well; none where either are too few
 */
public record SitePerformance(
    FindingCode code, int with, int without, int needed, Optional<Told> told) {

  /**
   * How well.
   *
   * @param area the area under the ROC curve
   * @param between its 95 % interval
   * @param cutOff the cut-off that would tell them apart best here
   * @param curve every cut-off
   */
  public record Told(double area, ConfidenceInterval between, CutOff cutOff, RocCurve curve) {}
}
