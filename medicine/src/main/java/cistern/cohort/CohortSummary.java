package cistern.cohort;

import cistern.bands.BandVerdict;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import java.io.Serializable;
import java.time.YearMonth;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BinaryOperator;

/**
 * Counts and moments of a cohort, in parts that may be merged in any order and grouping: the counts
 * come out identical, the moments to one part in 10¹².
 *
 * @param people how many punctures
 * @param verdicts how often each verdict was given, by code
 * @param values how the values lie, by code
 * @param criteria how often each verdict was given, by edition
 * @param quality what happened how often
 * @param amounts how times and volumes lie
 * @param byNeedle what happened how often, by needle
 * @param byMonth what happened how often, by month of the draw
 * @param gels how often a reader said the one and the other reader the other
 */
public record CohortSummary(
    long people,
    SortedMap<FindingCode, SortedMap<Verdict, Long>> verdicts,
    SortedMap<FindingCode, Distribution> values,
    SortedMap<String, SortedMap<String, Long>> criteria,
    SortedMap<QualityFigure, Tally> quality,
    SortedMap<QualityAmount, Distribution> amounts,
    SortedMap<String, SortedMap<QualityFigure, Tally>> byNeedle,
    SortedMap<YearMonth, SortedMap<QualityFigure, Tally>> byMonth,
    SortedMap<BandVerdict, SortedMap<BandVerdict, Long>> gels)
    implements Serializable {

  /** Nobody. */
  public static final CohortSummary NONE =
      new CohortSummary(
          0,
          Collections.emptySortedMap(),
          Collections.emptySortedMap(),
          Collections.emptySortedMap(),
          Collections.emptySortedMap(),
          Collections.emptySortedMap(),
          Collections.emptySortedMap(),
          Collections.emptySortedMap(),
          Collections.emptySortedMap());

  /** One member. */
  public static CohortSummary of(CohortMember member) {
    SortedMap<FindingCode, SortedMap<Verdict, Long>> verdicts = new TreeMap<>();
    member.verdicts().forEach((code, verdict) -> verdicts.put(code, one(verdict, 1L)));
    SortedMap<FindingCode, Distribution> values = new TreeMap<>();
    member.values().forEach((code, value) -> values.put(code, Distribution.of(value)));
    SortedMap<String, SortedMap<String, Long>> criteria = new TreeMap<>();
    member.criteria().forEach((edition, verdict) -> criteria.put(edition, one(verdict, 1L)));
    SortedMap<QualityFigure, Tally> quality = new TreeMap<>();
    member.quality().forEach((figure, answer) -> quality.put(figure, Tally.of(answer)));
    SortedMap<QualityAmount, Distribution> amounts = new TreeMap<>();
    member.amounts().forEach((amount, value) -> amounts.put(amount, Distribution.of(value)));
    SortedMap<YearMonth, SortedMap<QualityFigure, Tally>> byMonth = new TreeMap<>();
    member.month().ifPresent(month -> byMonth.put(month, quality));
    SortedMap<BandVerdict, SortedMap<BandVerdict, Long>> gels = new TreeMap<>();
    member.gel().other().ifPresent(o -> gels.put(member.gel().bands(), one(o, 1L)));
    return new CohortSummary(
        1,
        verdicts,
        values,
        criteria,
        quality,
        amounts,
        one(member.needle(), quality),
        byMonth,
        gels);
  }

  private static <K extends Comparable<K>, V> SortedMap<K, V> one(K key, V value) {
    return new TreeMap<>(Map.of(key, value));
  }

  /** All together; halves with halves, so that a large one is not copied for every small one. */
  public static CohortSummary merged(List<CohortSummary> all) {
    return switch (all.size()) {
      case 0 -> NONE;
      case 1 -> all.getFirst();
      default -> {
        int half = all.size() / 2;
        yield merged(all.subList(0, half)).merge(merged(all.subList(half, all.size())));
      }
    };
  }

  /** Both cohorts together. */
  public CohortSummary merge(CohortSummary other) {
    return new CohortSummary(
        people + other.people,
        merged(verdicts, other.verdicts, (a, b) -> merged(a, b, Long::sum)),
        merged(values, other.values, Distribution::merge),
        merged(criteria, other.criteria, (a, b) -> merged(a, b, Long::sum)),
        merged(quality, other.quality, Tally::merge),
        merged(amounts, other.amounts, Distribution::merge),
        merged(byNeedle, other.byNeedle, (a, b) -> merged(a, b, Tally::merge)),
        merged(byMonth, other.byMonth, (a, b) -> merged(a, b, Tally::merge)),
        merged(gels, other.gels, (a, b) -> merged(a, b, Long::sum)));
  }

  private static <K, V> SortedMap<K, V> merged(
      SortedMap<K, V> a, SortedMap<K, V> b, BinaryOperator<V> both) {
    SortedMap<K, V> merged = new TreeMap<>(a);
    b.forEach((key, value) -> merged.merge(key, value, both));
    return merged;
  }
}
