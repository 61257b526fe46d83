package cistern.clinic.casework.gel;

import cistern.clinic.setting.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The lanes of a gel as they were placed one after the other and not saved.
 *
 * @param done the placings, the last in force; empty when the lanes stand as in the case
 * @param undone those that were undone, the last to be done again first
 */
record Placings(List<Placement> done, List<Placement> undone) {

  /** The fields and the members of a draft that hold them. */
  static final String DONE = "placed";

  static final String UNDONE = "undone";

  /** The lanes as they stand in the case. */
  static final Placings NONE = new Placings(List.of(), List.of());

  Placings {
    done = List.copyOf(done);
    undone = List.copyOf(undone);
  }

  /** What the fields of a form or a draft say. */
  static Placings of(Map<String, List<String>> fields) {
    return new Placings(
        Placement.parse(fields.getOrDefault(DONE, List.of())),
        Placement.parse(fields.getOrDefault(UNDONE, List.of())));
  }

  /** With one more; what was undone before it cannot be done again. */
  Placings with(Placement placement) {
    return new Placings(kept(done, placement), List.of());
  }

  /** So many as are kept: of one that is forgotten stays what stood before it. */
  private static List<Placement> kept(List<Placement> done, Placement placement) {
    List<Placement> all = new ArrayList<>(done);
    all.add(placement);
    while (all.size() > Setting.PLACINGS_KEPT.number()) {
      String before = all.removeFirst().across();
      all.set(0, all.getFirst().with(before));
    }
    return all;
  }

  /** Without the last, which can be done again; what stands in the form now is then its own. */
  Placings back(String now) {
    return new Placings(done.subList(0, done.size() - 1), behind(undone, done.getLast().with(now)));
  }

  /** With the one that was undone last. */
  Placings forth(String now) {
    return new Placings(
        behind(done, undone.getLast().with(now)), undone.subList(0, undone.size() - 1));
  }

  private static List<Placement> behind(List<Placement> list, Placement last) {
    List<Placement> all = new ArrayList<>(list);
    all.add(last);
    return all;
  }
}
