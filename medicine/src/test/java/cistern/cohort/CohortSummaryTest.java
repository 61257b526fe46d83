package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.bands.BandVerdict;
import cistern.cohort.ReferenceLimits.Estimate;
import cistern.differential.Proportion;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CohortSummaryTest {

  private static final List<Answer> ANSWERS = List.of(Answer.values());

  private static CohortMember member(int i, Random random) {
    double index = Math.exp(random.nextGaussian());
    return new CohortMember(
        "m-" + i,
        OptionalDouble.of(20 + i % 60),
        Optional.of(YearMonth.of(2034, 1 + i % 12)),
        Map.of(FindingCode.IGG_INDEX, index, FindingCode.ALBUMIN_QUOTIENT, index / 100),
        Map.of(FindingCode.IGG_INDEX, index > 0.7 ? Verdict.ABOVE : Verdict.WITHIN),
        Map.of("2024", i % 2 == 0 ? "met" : "undetermined"),
        Map.of(QualityFigure.HEADACHE, ANSWERS.get(i % ANSWERS.size())),
        Map.of(QualityAmount.VOLUME, 1.0 + i % 12),
        i % 4 == 0 ? "cutting 20G" : "atraumatic 22G",
        new CohortMember.Gel(
            i % 3 == 0 ? BandVerdict.POSITIVE : BandVerdict.NEGATIVE,
            Optional.of(i % 5 == 0 ? BandVerdict.BORDERLINE : BandVerdict.POSITIVE),
            i % 2 == 0),
        Optional.empty(),
        Optional.of(i % 3 == 0 ? "ms" : "none"));
  }

  private static List<CohortMember> members(int people) {
    Random random = new Random(2);
    List<CohortMember> members = new ArrayList<>();
    for (int i = 0; i < people; i++) {
      members.add(member(i, random));
    }
    return members;
  }

  private static CohortSummary of(List<CohortMember> members) {
    return members.stream().map(CohortSummary::of).reduce(CohortSummary.NONE, CohortSummary::merge);
  }

  private static <K, V> V of(Map<K, V> values, K key) {
    return Objects.requireNonNull(values.get(key));
  }

  @Test
  void merge_anyOrderAndGrouping_countsAreIdentical() {
    List<CohortMember> members = new ArrayList<>(members(240));
    CohortSummary whole = of(members);
    Collections.shuffle(members, new Random(4));
    CohortSummary parts =
        of(members.subList(100, 240))
            .merge(of(members.subList(0, 30)))
            .merge(of(members.subList(30, 100)));

    assertThat(parts.people()).isEqualTo(240);
    assertThat(parts.verdicts()).isEqualTo(whole.verdicts());
    assertThat(parts.criteria()).isEqualTo(whole.criteria());
    assertThat(parts.quality()).isEqualTo(whole.quality());
    assertThat(parts.byNeedle()).isEqualTo(whole.byNeedle());
    assertThat(parts.byMonth()).isEqualTo(whole.byMonth());
    assertThat(parts.gels()).isEqualTo(whole.gels());
    assertThat(of(parts.amounts(), QualityAmount.VOLUME).spectrum())
        .isEqualTo(of(whole.amounts(), QualityAmount.VOLUME).spectrum());
    Moments one = of(whole.values(), FindingCode.IGG_INDEX).moments();
    Moments other = of(parts.values(), FindingCode.IGG_INDEX).moments();
    assertThat(other.mean()).isCloseTo(one.mean(), within(1e-12 * one.mean()));
  }

  @Test
  void quality_notRecorded_isNeitherYesNorNo() {
    Tally tally = of(of(members(240)).quality(), QualityFigure.HEADACHE);

    assertThat(tally).isEqualTo(new Tally(80, 80, 80));
    assertThat(tally.share()).contains(new Proportion(80, 160));
    assertThat(Tally.of(Answer.UNKNOWN).share()).isEmpty();
  }

  @Test
  void study_namedGroups_givesLimitsAndPerformance() {
    SitePeople people = SiteStudy.people(Set.of("none"), Set.of("ms"));
    SitePeople rest = SiteStudy.people(Set.of("none"), Set.of("ms"));
    members(240).subList(0, 90).forEach(rest::add);
    members(240).subList(90, 240).forEach(people::add);
    people.addAll(rest);
    SiteStudy study = new SiteStudy(Facts.standard(), people, 1);

    SiteLimit albumin = study.limits().getFirst();
    assertThat(albumin.code()).isEqualTo(FindingCode.ALBUMIN_QUOTIENT);
    assertThat(albumin.estimate()).isInstanceOf(Estimate.ByRank.class);
    assertThat(albumin.byAge()).isPresent();
    assertThat(albumin.outside()).isEmpty();
    SiteLimit index = study.limits().get(1);
    assertThat(index.outside().orElseThrow().of()).isEqualTo(160);
    // the indices are drawn around 1, so that a limit of 0.7 cannot stand
    assertThat(index.verified().orElseThrow().stands()).isFalse();
    SitePerformance told = study.performance().getFirst();
    assertThat(told.with()).isEqualTo(80);
    // both groups are drawn alike, so that the area is a half within three standard errors
    assertThat(told.told().orElseThrow().area()).isCloseTo(0.5, within(0.12));
    // no κ index was given
    assertThat(study.performance().get(1).told()).isEmpty();
  }

  @Test
  void study_noGroups_saysNothing() {
    SitePeople people = SiteStudy.people(Set.of(), Set.of());
    members(30).forEach(people::add);
    SiteStudy study = new SiteStudy(Facts.standard(), people, 1);

    assertThat(study.limits()).isEmpty();
    assertThat(study.performance()).isEmpty();
    // 15 of 30 came with an attack, every third member has bands
    assertThat(study.shareOfBands()).contains(new Proportion(5, 15));
  }
}
