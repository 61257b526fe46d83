package cistern.exchange.lab;

import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.ReportedResult.Standing;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Results that come more than once: an amended one replaces what was sent before, a final one a
 * preliminary one, and the same value twice is one. Two final values that differ both stay, so that
 * the work-up is refused and names both places.
 */
final class Replaced {

  private Replaced() {}

  /**
   * The results without those that an amended one replaces which is not understood: what was sent
   * before is no longer what the laboratory says.
   */
  static List<ReadResult> by(
      List<ReportedResult> unread, List<ReadResult> results, List<LeftOver> leftOver) {
    List<ReadResult> kept = new ArrayList<>();
    for (ReadResult one : results) {
      ReportedResult from = one.from();
      boolean isReplaced =
          from.standing() != Standing.AMENDED
              && unread.stream()
                  .anyMatch(u -> u.code().equals(from.code()) && u.isOfSameDraw(from));
      if (isReplaced) {
        leftOver.add(LeftOver.of(from, Why.REPLACED));
      } else {
        kept.add(one);
      }
    }
    return kept;
  }

  static List<ReadResult> without(List<ReadResult> results, List<LeftOver> leftOver) {
    Map<String, List<ReadResult>> byKey = new LinkedHashMap<>();
    results.forEach(r -> byKey.computeIfAbsent(r.key(), k -> new ArrayList<>()).add(r));
    List<ReadResult> kept = new ArrayList<>();
    byKey.values().forEach(same -> kept.addAll(standing(same, leftOver)));
    return kept;
  }

  private static List<ReadResult> standing(List<ReadResult> same, List<LeftOver> leftOver) {
    Standing best =
        same.stream()
            .map(u -> u.from().standing())
            .reduce(Standing.PRELIMINARY, Replaced::stronger);
    List<ReadResult> kept = new ArrayList<>();
    for (ReadResult one : same) {
      if (one.from().standing() != best) {
        leftOver.add(LeftOver.of(one.from(), Why.REPLACED));
      } else if (kept.stream().anyMatch(one::isSame)) {
        leftOver.add(LeftOver.of(one.from(), Why.REPEATED));
      } else {
        kept.add(one);
      }
    }
    if (best == Standing.AMENDED) {
      while (kept.size() > 1) {
        leftOver.add(LeftOver.of(kept.removeFirst().from(), Why.REPLACED));
      }
    }
    return kept;
  }

  private static Standing stronger(Standing one, Standing other) {
    return rank(one) >= rank(other) ? one : other;
  }

  private static int rank(Standing standing) {
    return switch (standing) {
      case AMENDED -> 2;
      case FINAL -> 1;
      case PRELIMINARY, CANCELLED, AWAITED -> 0;
    };
  }
}
