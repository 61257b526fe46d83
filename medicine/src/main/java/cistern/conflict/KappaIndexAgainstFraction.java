package cistern.conflict;

import cistern.barrier.IndexCrossing;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The linear κ index and the hyperbolic κ fraction disagree.
 *
 * @param isIndexAbove which of the two is above
 * @param albuminQuotient where they disagree, if it is known exactly
 * @param crossing where the two limits cross
 */
public record KappaIndexAgainstFraction(
    boolean isIndexAbove, OptionalDouble albuminQuotient, IndexCrossing crossing)
    implements Conflict {

  @Override
  public String code() {
    return "kappa-index-against-fraction";
  }

  @Override
  public List<String> findings() {
    return List.of(FindingCode.KAPPA_INDEX.code(), FindingCode.KAPPA_FRACTION.code());
  }

  @Override
  public String text() {
    String crossings =
        crossing.crossings().stream().map(Printed::quotient).collect(Collectors.joining(" and "));
    String here =
        albuminQuotient.isPresent()
            ? " (here " + Printed.quotient(albuminQuotient.getAsDouble()) + ")"
            : "";
    String limit = Printed.decimals(crossing.index(), 1);
    return isIndexAbove
        ? "The κ index is at or above %s, but there is no intrathecal κ fraction: under an albumin quotient of %s × 10⁻³%s the curve asks for more than the index. Look at the bands on the same sample."
            .formatted(limit, crossings, here)
        : "There is an intrathecal κ fraction, but the κ index is under %s: beyond an albumin quotient of %s × 10⁻³%s the straight index asks for more than the curve. The two methods are both published; bands on the same sample decide."
            .formatted(limit, crossings, here);
  }
}
