package cistern.cohort;

import cistern.cohort.SitePerformance.Told;
import cistern.differential.Proportion;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What the people of a site whose final diagnosis is known say about limits, performance and the
 * probabilities that were given.
 */
public final class SiteStudy {

  private static final double CONFIDENCE = 0.95;

  /** The findings for which a laboratory may want limits of its own. */
  private static final List<FindingCode> LIMITED =
      List.of(
          FindingCode.ALBUMIN_QUOTIENT,
          FindingCode.IGG_INDEX,
          FindingCode.KAPPA_INDEX,
          FindingCode.LACTATE,
          FindingCode.TOTAL_PROTEIN);

  /** The findings that are asked to tell a diagnosis from others. */
  private static final List<FindingCode> TELLING =
      List.of(FindingCode.IGG_INDEX, FindingCode.KAPPA_INDEX, FindingCode.IGG_FRACTION);

  private static final List<FindingCode> ALL =
      Stream.concat(LIMITED.stream(), TELLING.stream()).distinct().toList();

  private final ReferenceLimits reference;
  private final VerifiedLimit.Rule verification;
  private final double upperShare;
  private final int fewestByAge;
  private final int fewestTold;
  private final long seed;
  private final SitePeople people;

  /**
   * A study.
   *
   * @param facts in force
   * @param people with a final diagnosis
   * @param seed of the cut-off's samples
   */
  public SiteStudy(Facts facts, SitePeople people, long seed) {
    this.reference = ReferenceLimits.of(facts);
    this.verification = VerifiedLimit.Rule.of(facts);
    this.upperShare = (1 + facts.number("cohort.reference-share")) / 2;
    this.fewestByAge = (int) facts.number("cohort.reference-ranks.people");
    this.fewestTold = (int) facts.number("cohort.performance.people");
    this.people = people;
    this.seed = seed;
  }

  /**
   * Nobody yet, to be gathered.
   *
   * @param controls the diagnoses of people who count as without the disease
   * @param cases the diagnoses of people who count as with it
   */
  public static SitePeople people(Set<String> controls, Set<String> cases) {
    return new SitePeople(ALL, controls, cases);
  }

  /** The limits of the site, when controls were named. */
  public List<SiteLimit> limits() {
    return people.hasControls() ? LIMITED.stream().map(this::limit).toList() : List.of();
  }

  private SiteLimit limit(FindingCode code) {
    Optional<Proportion> outside = people.without().above(code).share();
    return new SiteLimit(
        code,
        reference.of(people.without().values(code)),
        code == FindingCode.ALBUMIN_QUOTIENT ? byAge(code) : Optional.empty(),
        outside,
        outside.flatMap(verification::judge));
  }

  private Optional<AgeLine> byAge(FindingCode code) {
    double[][] aged = people.without().aged(code);
    boolean isTooFew =
        aged[0].length < fewestByAge || Arrays.stream(aged[0]).distinct().count() < 2;
    return isTooFew ? Optional.empty() : Optional.of(AgeLine.of(aged[0], aged[1], upperShare));
  }

  /** Age and value of each control with both, for a figure. */
  public double[][] controlsByAge(FindingCode code) {
    return people.without().aged(code);
  }

  /** How well findings told the cases from the controls, when both were named. */
  public List<SitePerformance> performance() {
    return people.hasCases() && people.hasControls()
        ? TELLING.stream().map(this::performance).toList()
        : List.of();
  }

  private SitePerformance performance(FindingCode code) {
    double[] ill = people.with().values(code);
    double[] well = people.without().values(code);
    boolean isEnough = Math.min(ill.length, well.length) >= fewestTold;
    return new SitePerformance(
        code,
        ill.length,
        well.length,
        fewestTold,
        isEnough ? Optional.of(told(ill, well)) : Optional.empty());
  }

  private Told told(double[] ill, double[] well) {
    Discrimination discrimination = Discrimination.of(ill, well);
    return new Told(
        discrimination.area(),
        discrimination.interval(CONFIDENCE),
        CutOff.of(ill, well, seed),
        RocCurve.of(ill, well));
  }

  /**
   * How many of the people with a typical first attack have bands, of those whose bands are known:
   * the share that the probability draws where no site has audited its own.
   */
  public Optional<Proportion> shareOfBands() {
    return people.bandsOfAttacks().share();
  }

  /** How the probabilities that were given stand to the final diagnoses. */
  public Foretelling foretelling() {
    return people.foretelling();
  }
}
