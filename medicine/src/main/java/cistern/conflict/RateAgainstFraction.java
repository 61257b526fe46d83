package cistern.conflict;

import cistern.finding.FindingCode;
import java.util.List;

/**
 * The IgG synthesis rate and the intrathecal fraction disagree.
 *
 * @param isRateAbove which of the two is above
 * @param isBarrierLeaking whether the albumin quotient is above its limit
 */
public record RateAgainstFraction(boolean isRateAbove, boolean isBarrierLeaking)
    implements Conflict {

  @Override
  public String code() {
    return "rate-against-fraction";
  }

  @Override
  public List<String> findings() {
    return List.of(FindingCode.IGG_SYNTHESIS_RATE.code(), FindingCode.IGG_FRACTION.code());
  }

  @Override
  public String text() {
    if (!isRateAbove) {
      return "The intrathecal IgG fraction is above zero, but the synthesis rate is not above its"
          + " limit: the rate's normal range is wide and hides a small synthesis. Lean on"
          + " the fraction, and on the bands.";
    }
    return isBarrierLeaking
        ? "The synthesis rate is above its limit, but there is no intrathecal IgG fraction: the"
            + " rate is straight where the barrier's curve bends, and a leaky barrier lifts it"
            + " falsely. Lean on the fraction, and on the bands."
        : "The synthesis rate is above its limit, but there is no intrathecal IgG fraction: the"
            + " rate assumes an average flow and serum, the fraction does not. Lean on the"
            + " fraction, and on the bands.";
  }
}
