package cistern.report.cohort;

import cistern.cohort.CohortSummary;
import cistern.cohort.Foretelling;
import cistern.cohort.SiteLimit;
import cistern.cohort.SitePerformance;
import cistern.cohort.SiteStudy;
import cistern.differential.Proportion;
import cistern.finding.FindingCode;
import cistern.report.cohort.CohortChanges.Changed;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * Everything that is said of a cohort.
 *
 * @param made what made it
 * @param groups who counts as what
 * @param isInvented whether a work-up says that it is invented
 * @param summary counts and moments
 * @param refused how many inputs were not valid and are left out
 * @param site what the people with a final diagnosis say
 * @param isCompared whether an earlier table was given
 * @param changes what differs from it
 */
public record CohortReport(
    Made made,
    Groups groups,
    boolean isInvented,
    CohortSummary summary,
    int refused,
    Site site,
    boolean isCompared,
    List<Changed> changes) {

  /** Copies the list. */
  public CohortReport {
    changes = List.copyOf(changes);
  }

  /**
   * What made it.
   *
   * @param software the name and version of the program
   * @param facts the names and versions of the fact tables
   * @param policy the local policy in force
   */
  public record Made(String software, String facts, Optional<String> policy) {}

  /**
   * What a person said.
   *
   * @param controls the diagnoses that count as without the disease
   * @param cases the diagnoses that count as with it
   * @param columnsConfirmedBy who confirmed columns that looked mixed up
   * @param signedBy who signs what the people suggest
   */
  public record Groups(
      Set<String> controls,
      Set<String> cases,
      Optional<String> columnsConfirmedBy,
      Optional<String> signedBy) {
    /** Copies the sets, in order. */
    public Groups {
      controls = Collections.unmodifiableSet(new TreeSet<>(controls));
      cases = Collections.unmodifiableSet(new TreeSet<>(cases));
    }
  }

  /**
   * What the people with a final diagnosis say.
   *
   * @param limits of findings
   * @param performance how well findings told the cases from the controls
   * @param shareOfBands how many of those with a first attack have bands
   * @param foretelling how given probabilities stand to what became of the people
   * @param albumin the albumin quotient of each control by age
   */
  public record Site(
      List<SiteLimit> limits,
      List<SitePerformance> performance,
      Optional<Proportion> shareOfBands,
      Foretelling foretelling,
      List<Aged> albumin) {
    /** Copies the lists. */
    public Site {
      limits = List.copyOf(limits);
      performance = List.copyOf(performance);
      albumin = List.copyOf(albumin);
    }

    /** What a study found. */
    public static Site of(SiteStudy study) {
      double[][] aged = study.controlsByAge(FindingCode.ALBUMIN_QUOTIENT);
      int shown = Math.min(aged[0].length, MOST_SHOWN);
      List<Aged> albumin =
          IntStream.range(0, shown)
              .map(i -> (int) ((long) i * aged[0].length / shown))
              .mapToObj(i -> new Aged(aged[0][i], aged[1][i]))
              .toList();
      return new Site(
          study.limits(), study.performance(), study.shareOfBands(), study.foretelling(), albumin);
    }
  }

  /** Points that a figure can show apart. */
  private static final int MOST_SHOWN = 1_000;

  /**
   * One person's value.
   *
   * @param years the age
   * @param value in the unit of the finding
   */
  public record Aged(double years, double value) {}
}
