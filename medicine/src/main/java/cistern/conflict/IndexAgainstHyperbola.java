package cistern.conflict;

import cistern.barrier.IndexCrossing;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The linear IgG index and the hyperbolic IgG limit disagree.
 *
 * @param isIndexAbove which of the two is above
 * @param albuminQuotient where they disagree, if it is known exactly
 * @param crossing where the two limits cross
 * @param serum what the serum adds to the disagreement
 */
public record IndexAgainstHyperbola(
    boolean isIndexAbove, OptionalDouble albuminQuotient, IndexCrossing crossing, SerumHint serum)
    implements Conflict {

  @Override
  public String code() {
    return "index-against-hyperbola";
  }

  @Override
  public List<String> findings() {
    return List.of(FindingCode.IGG_INDEX.code(), FindingCode.IGG_QUOTIENT.code());
  }

  @Override
  public String text() {
    String index = Printed.decimals(crossing.index(), 2);
    String crossings =
        crossing.crossings().stream().map(Printed::quotient).collect(Collectors.joining(" and "));
    String which =
        isIndexAbove
            ? "The IgG index is above %s, but the IgG quotient is not above its hyperbolic limit."
                .formatted(index)
            : "The IgG quotient is above its hyperbolic limit, but the IgG index is not above %s."
                .formatted(index);
    String why =
        " The two limits cross at albumin quotients of %s × 10⁻³%s; outside them a leaky barrier lifts the index without synthesis, between them the index hides a small synthesis."
            .formatted(crossings, here());
    return which + why + serum.text() + " Lean on the quotient limit, and on the bands.";
  }

  private String here() {
    return albuminQuotient.isPresent()
        ? ", and this one is " + Printed.quotient(albuminQuotient.getAsDouble())
        : "";
  }
}
