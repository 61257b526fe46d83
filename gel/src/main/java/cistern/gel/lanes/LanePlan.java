package cistern.gel.lanes;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * What a person says about the lanes of a gel, from left to right.
 *
 * @param lanes in order; empty when nothing was said
 */
public record LanePlan(List<NamedLane> lanes) {
  /** Nothing said: lanes are found and neighbours paired. */
  public static final LanePlan NONE = new LanePlan(List.of());

  /** Copies the lanes. */
  public LanePlan {
    lanes = List.copyOf(lanes);
  }

  /**
   * Two lanes that belong to one person, as indices into the plan.
   *
   * @param number the pair's number
   */
  public record NamedPair(int number, OptionalInt csf, OptionalInt serum) {}

  /**
   * The plan of names such as {@code csf,serum,control} or {@code csf:1,csf:2,serum:1,serum:2}, or
   * with the place of every lane: {@code csf:0@88/60,serum:0@176.5/60}.
   *
   * @throws IllegalArgumentException when a name is none, with a sentence that says which
   */
  public static LanePlan parse(String names) {
    return parse(List.of(names.split(",", -1)));
  }

  /** The plan of names one by one; those with a place are put in order. */
  public static LanePlan parse(List<String> names) {
    List<NamedLane> lanes = names.stream().map(NamedLane::parse).toList();
    long placed = lanes.stream().filter(l -> l.place().isPresent()).count();
    if (placed > 0 && placed < lanes.size()) {
      throw new IllegalArgumentException("either every lane has a place or none");
    }
    return new LanePlan(lanes).inOrder();
  }

  /** The same from left to right, when every place is given. */
  LanePlan inOrder() {
    return isPlaced()
        ? new LanePlan(
            lanes.stream()
                .sorted(Comparator.comparingDouble(l -> l.place().orElseThrow().xCentre()))
                .toList())
        : this;
  }

  /** The plan in words, as it is parsed; nothing when nothing was said. */
  public String toWords() {
    return String.join(",", lanes.stream().map(NamedLane::toWords).toList());
  }

  /** Whether nothing was said. */
  public boolean isNone() {
    return lanes.isEmpty();
  }

  /** Whether every lane's place was given. */
  public boolean isPlaced() {
    return !isNone() && lanes.stream().allMatch(l -> l.place().isPresent());
  }

  /** Whether a control lane is named. */
  public boolean isControlled() {
    return lanes.stream().anyMatch(l -> l.kind() == LaneKind.CONTROL);
  }

  /**
   * The pair number of each lane: the one given; else places are paired two by two from the left,
   * controls left out and blanks holding a place. Blanks and controls themselves have none.
   */
  public List<OptionalInt> pairNumbers() {
    List<OptionalInt> numbers = new ArrayList<>();
    int place = 0;
    for (NamedLane lane : lanes) {
      boolean isCounted = lane.kind() != LaneKind.CONTROL && lane.pair().isEmpty();
      OptionalInt own = isCounted ? OptionalInt.of(place++ / 2) : lane.pair();
      boolean isSample = lane.kind() == LaneKind.CSF || lane.kind() == LaneKind.SERUM;
      numbers.add(isSample ? own : OptionalInt.empty());
    }
    return numbers;
  }

  /** The pairs in the order of their numbers; of a kind named twice in a pair the first counts. */
  public List<NamedPair> pairs() {
    List<OptionalInt> numbers = pairNumbers();
    TreeMap<Integer, NamedPair> pairs = new TreeMap<>();
    for (int i = 0; i < lanes.size(); i++) {
      if (numbers.get(i).isPresent()) {
        int n = numbers.get(i).getAsInt();
        NamedPair old =
            pairs.getOrDefault(n, new NamedPair(n, OptionalInt.empty(), OptionalInt.empty()));
        boolean isCsf = lanes.get(i).kind() == LaneKind.CSF;
        OptionalInt csf = isCsf && old.csf().isEmpty() ? OptionalInt.of(i) : old.csf();
        OptionalInt serum = !isCsf && old.serum().isEmpty() ? OptionalInt.of(i) : old.serum();
        pairs.put(n, new NamedPair(n, csf, serum));
      }
    }
    return List.copyOf(pairs.values());
  }

  /**
   * These names on the places of another plan, blanks left out where that fits.
   *
   * @throws IllegalArgumentException when there are more or fewer places, with both counts
   */
  public LanePlan withPlaces(LanePlan placed) {
    LanePlan names = lanes.size() == placed.lanes.size() ? this : withoutBlanks();
    if (names.lanes.size() != placed.lanes.size()) {
      throw new IllegalArgumentException(
          lanes.size() + " lanes are named and the lane file has " + placed.lanes.size());
    }
    List<NamedLane> both = new ArrayList<>();
    for (int i = 0; i < names.lanes.size(); i++) {
      NamedLane name = names.lanes.get(i);
      both.add(new NamedLane(name.kind(), name.pair(), placed.lanes.get(i).place()));
    }
    return new LanePlan(both);
  }

  /** The names alone, to be laid on the lanes of the picture anew. */
  public LanePlan withoutPlaces() {
    return new LanePlan(
        lanes.stream().map(l -> new NamedLane(l.kind(), l.pair(), Optional.empty())).toList());
  }

  /** The plan without its blanks, each lane with the pair number it has among them. */
  public LanePlan withoutBlanks() {
    List<OptionalInt> numbers = pairNumbers();
    List<NamedLane> kept = new ArrayList<>();
    for (int i = 0; i < lanes.size(); i++) {
      NamedLane lane = lanes.get(i);
      if (lane.kind() != LaneKind.BLANK) {
        kept.add(new NamedLane(lane.kind(), numbers.get(i), lane.place()));
      }
    }
    return new LanePlan(kept);
  }

  /** The plan of the mirrored gel: the same lanes from right to left, each in its own pair. */
  public LanePlan reversed() {
    List<OptionalInt> numbers = pairNumbers();
    List<NamedLane> turned = new ArrayList<>();
    for (int i = lanes.size() - 1; i >= 0; i--) {
      turned.add(new NamedLane(lanes.get(i).kind(), numbers.get(i), lanes.get(i).place()));
    }
    return new LanePlan(turned);
  }
}
