package cistern.gel.lanes;

import cistern.fact.Facts;
import cistern.gel.image.Density;
import cistern.gel.membrane.Sheet;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds the lanes of an upright gel: the strips give one row of column means, in which dynamic
 * programming lays intervals of one common width that stand out from both of their flanks.
 */
public final class LaneFinder {
  /** Share of half the window of the ground beyond which a lane is wide. */
  private static final double WIDE = 0.8;

  private final LaneLimits limits;

  /** A finder with the limits of some facts. */
  public LaneFinder(Facts facts) {
    this.limits = LaneLimits.of(facts);
  }

  /** The fan of a gel, its lanes from left to right and how far the membrane reaches. */
  public record Found(Fan fan, List<LanePlace> lanes, Extent sheet) {
    /** Copies the lanes. */
    public Found {
      lanes = List.copyOf(lanes);
    }
  }

  /** The lanes of a density within its sheet. */
  public Found find(Density density, Sheet sheet) {
    Found found = find(density, sheet, false);
    double half = limits.groundReach() * density.width();
    boolean isWide = found.lanes().stream().anyMatch(l -> l.width() > WIDE * half);
    return isWide ? find(density, sheet, true) : found;
  }

  private Found find(Density density, Sheet sheet, boolean isWide) {
    Strips strips = Strips.of(density, sheet, limits, isWide);
    double[] size = {density.width(), density.height()};
    Fan fan = new FanSearch(strips, size, limits).search();
    float[] columns = FanSearch.sum(strips, fan, 1);
    Extent extent = extent(sheet);
    CommonWidth common = CommonWidth.of(columns, limits, extent.dividedBy(Strips.STEP));
    List<LanePlace> lanes = new ArrayList<>();
    for (CommonWidth.Interval i : common.intervals()) {
      double centre = Strips.STEP * i.centre() - 0.5;
      lanes.add(new LanePlace(centre, Strips.STEP * i.width(), fan.slopeAt(centre)));
    }
    return new Found(fan, lanes, extent);
  }

  private static Extent extent(Sheet sheet) {
    double middle = sheet.height() / 2.0;
    int from = sheet.firstColumn(middle, 0);
    int to = sheet.lastColumn(middle, 0);
    return new Extent(from, to, from > 0 || to < sheet.width());
  }
}
