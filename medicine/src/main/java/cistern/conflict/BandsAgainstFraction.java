package cistern.conflict;

import cistern.finding.FindingCode;
import java.util.List;

/**
 * Bands and intrathecal IgG fraction disagree.
 *
 * @param areBandsPositive which of the two says local synthesis
 */
public record BandsAgainstFraction(boolean areBandsPositive) implements Conflict {

  @Override
  public String code() {
    return "bands-against-fraction";
  }

  @Override
  public List<String> findings() {
    return List.of("bands", FindingCode.IGG_FRACTION.code());
  }

  @Override
  public String text() {
    return areBandsPositive
        ? "There are CSF-only bands, but no intrathecal IgG fraction: the amount is too small to"
            + " pass the limit, which is common in MS. Bands are the more sensitive test; lean on"
            + " them."
        : "There is an intrathecal IgG fraction, but there are no CSF-only bands: synthesis can be"
            + " polyclonal, as in infection, or the serum does not belong to the fluid, or the"
            + " focusing missed it. Check the pair and repeat the focusing with equal amounts of"
            + " IgG.";
  }
}
