package cistern.conflict;

import cistern.finding.FindingCode;
import java.util.List;

/**
 * Bands and κ index disagree.
 *
 * @param areBandsPositive which of the two says local synthesis
 */
public record BandsAgainstKappa(boolean areBandsPositive) implements Conflict {

  @Override
  public String code() {
    return "bands-against-kappa";
  }

  @Override
  public List<String> findings() {
    return List.of("bands", FindingCode.KAPPA_INDEX.code());
  }

  @Override
  public String text() {
    return areBandsPositive
        ? "There are CSF-only bands, but the κ index is under its limit: uncommon, and a high serum"
            + " κ (kidneys, another assay) can hide it. Lean on the bands; check serum κ and that"
            + " both fluids were run together."
        : "The κ index is at or above its limit, but there are no CSF-only bands: κ also sees IgA"
            + " and IgM made locally and small amounts of IgG that focusing misses. The 2024"
            + " criteria accept either marker, the 2017 criteria bands only. Repeat the focusing"
            + " on the same sample.";
  }
}
