package cistern.statement;

import cistern.finding.Chances;
import cistern.finding.Finding;
import cistern.finding.Printed;
import cistern.finding.Threshold;

/**
 * A value so near its limit that measurement error alone leaves the verdict open.
 *
 * @param finding a finding with an exact value, a limit and a probability
 */
public record NearLimit(Finding finding) implements Statement {

  @Override
  public String code() {
    return "near-limit";
  }

  @Override
  public String text() {
    double limit =
        finding
            .limits()
            .above()
            .or(() -> finding.limits().within())
            .map(Threshold::at)
            .orElseThrow();
    return "The %s lies near its limit (%s, limit %s): %s."
        .formatted(
            finding.code().term(),
            Printed.besideLimit(finding, finding.number().orElseThrow(), limit),
            Printed.limit(finding, limit),
            Chances.toLieAbove(finding.uncertainty().probabilityAbove().orElseThrow()));
  }
}
