package cistern.gel;

import cistern.fact.Facts;
import cistern.gel.lanes.FoundLane;
import cistern.gel.lanes.LaneKind;
import cistern.gel.lanes.LanePlan;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether as many lanes are seen as were named, once the names are laid on the row.
 *
 * @param plan the names
 * @param laid the lane of each name
 * @param seen the lanes that stand out, whatever the names say
 * @param facts how clearly a lane must be seen
 */
record CountCheck(LanePlan plan, List<FoundLane> laid, List<FoundLane> seen, Facts facts) {

  /**
   * Whether a name is missing: of the lanes that are seen one as clear as the others has none, or
   * two plain ones have none.
   */
  boolean isNameMissing() {
    List<FoundLane> full = full();
    double usual = median(seen);
    double clear = Math.max(number("gel.row.stray"), number("gel.row.stray-share") * usual);
    List<FoundLane> nameless = nameless();
    double plain = Math.min(number("gel.row.plain"), number("gel.row.even") * faintest(full));
    return seen.size() > full.size()
        && (nameless.stream().anyMatch(l -> l.seen() >= clear && isBeside(l))
            || isMany(nameless.stream().filter(l -> l.seen() >= plain).toList(), full));
  }

  /** Whether most names have no lane that is seen. */
  boolean isMostlyUnseen() {
    List<FoundLane> full = full();
    long empty = full.stream().filter(l -> l.seen() < number("gel.row.unseen")).count();
    return 2 * empty > full.size();
  }

  private double number(String fact) {
    return facts.number(fact);
  }

  private List<FoundLane> full() {
    List<FoundLane> full = new ArrayList<>();
    for (int i = 0; i < laid.size(); i++) {
      if (plan.lanes().get(i).kind() != LaneKind.BLANK) {
        full.add(laid.get(i));
      }
    }
    return full;
  }

  /**
   * Whether an end of the row has a name and no lane, where every other lane is plain: an empty
   * lane within leaves a gap.
   */
  boolean isLaneMissing() {
    List<FoundLane> full = full();
    double lost = number("gel.row.lost");
    double plain = number("gel.row.plain");
    boolean isSplit = full.stream().allMatch(l -> l.seen() < lost || l.seen() >= plain);
    return isSplit && isOpen(full, lost) && seen.size() < full.size();
  }

  /** Whether the first or the last lane is seen less clearly than so. */
  private static boolean isOpen(List<FoundLane> full, double least) {
    return !full.isEmpty() && (full.getFirst().seen() < least || full.getLast().seen() < least);
  }

  /** Whether a lane at an end is hardly seen, or one is seen that has no name. */
  boolean isDoubtful() {
    return isOpen(full(), number("gel.row.unseen"))
        || seen.stream().anyMatch(l -> l.seen() >= number("gel.row.stray") && isNameless(l));
  }

  private boolean isNameless(FoundLane lane) {
    return laid.stream().noneMatch(l -> distance(l, lane) < 0.5 * lane.width());
  }

  /** Whether two lie beside named lanes, or as many as half of those in the row beyond them. */
  private boolean isMany(List<FoundLane> nameless, List<FoundLane> full) {
    long beside = nameless.stream().filter(this::isBeside).count();
    return beside > 1 || (nameless.size() > 1 && 2 * nameless.size() >= full.size());
  }

  private boolean isBeside(FoundLane lane) {
    double reach = number("gel.row.reach") * longest();
    return laid.stream().anyMatch(l -> distance(l, lane) < reach);
  }

  /** How clearly the faintest of the named lanes is seen that is seen at all. */
  private double faintest(List<FoundLane> full) {
    double unseen = number("gel.row.lost");
    return full.stream().mapToDouble(FoundLane::seen).filter(s -> s >= unseen).min().orElse(1);
  }

  /** The lanes of the row that have no name: no more than a step from one that is of the row. */
  private List<FoundLane> nameless() {
    List<FoundLane> row = new ArrayList<>(laid);
    List<FoundLane> left = new ArrayList<>(seen.stream().filter(this::isNameless).toList());
    List<FoundLane> found = new ArrayList<>();
    double reach = number("gel.row.reach") * longest();
    for (boolean isGrowing = true; isGrowing; ) {
      List<FoundLane> next =
          left.stream().filter(l -> row.stream().anyMatch(r -> distance(r, l) < reach)).toList();
      row.addAll(next);
      found.addAll(next);
      left.removeAll(next);
      isGrowing = !next.isEmpty();
    }
    return found;
  }

  /** The longest step of the named row; of one lane its width. */
  private double longest() {
    double step = laid.isEmpty() ? 0 : laid.getFirst().width();
    for (int i = 1; i < laid.size(); i++) {
      step = Math.max(step, distance(laid.get(i - 1), laid.get(i)));
    }
    return step;
  }

  private static double distance(FoundLane a, FoundLane b) {
    double row = 0.5 * (a.course().firstRow() + a.course().lastRow());
    return Math.abs(a.course().at(row) - b.course().at(row));
  }

  private static double median(List<FoundLane> lanes) {
    double[] seen = lanes.stream().mapToDouble(FoundLane::seen).sorted().toArray();
    return seen.length == 0 ? 0 : seen[seen.length / 2];
  }
}
