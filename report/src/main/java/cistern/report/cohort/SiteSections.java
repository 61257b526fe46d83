package cistern.report.cohort;

import cistern.cohort.AgeLine;
import cistern.cohort.Foretelling;
import cistern.cohort.Foretelling.Arm;
import cistern.cohort.ReferenceLimits.Estimate;
import cistern.cohort.SiteLimit;
import cistern.cohort.SitePerformance;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What the people of a site with a final diagnosis say of limits, findings and probabilities. */
final class SiteSections {

  private final CohortReport report;
  private final int fewestInArm;
  private final int smallest;

  /**
   * Sections of a report.
   *
   * @param fewestInArm people in each arm from which probabilities are judged
   * @param smallest group that is shown, so that nobody is recognised
   */
  SiteSections(CohortReport report, int fewestInArm, int smallest) {
    this.report = report;
    this.fewestInArm = fewestInArm;
    this.smallest = smallest;
  }

  /** Limits from the people named as controls. */
  Optional<Section> limits() {
    List<SiteLimit> limits = report.site().limits();
    if (limits.isEmpty()) {
      return Optional.empty();
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Table(
            "from the controls ("
                + String.join(", ", report.groups().controls())
                + "); limits by rank with their 90 % interval",
            List.of("finding", "people", "lower", "upper", "above the limit in force"),
            limits.stream().map(this::limit).toList()));
    List<String> said = limits.stream().flatMap(l -> verified(l).stream()).toList();
    if (!said.isEmpty()) {
      blocks.add(Paragraphs.of(said.toArray(String[]::new)));
    }
    limits.stream()
        .flatMap(l -> l.byAge().stream())
        .findFirst()
        .ifPresent(line -> blocks.add(byAge(line)));
    return Optional.of(new Section("Limits of this site", blocks));
  }

  private Picture byAge(AgeLine line) {
    return new Picture(AgeFigure.of(report.site().albumin(), line));
  }

  private static Optional<String> verified(SiteLimit limit) {
    return limit
        .verified()
        .map(
            v ->
                "%s: of %d controls %d lie above the limit in force, %s."
                    .formatted(
                        CohortWords.sentence(limit.code().term()),
                        v.people(),
                        v.outside(),
                        v.stands()
                            ? "no more than the " + v.allowed() + " that may; it stands here"
                            : "more than the "
                                + v.allowed()
                                + " that may; it does not fit these people"));
  }

  /** How many people, unless so few that they could be recognised. */
  private String people(long people) {
    return people < smallest ? "under " + smallest : Long.toString(people);
  }

  private Row limit(SiteLimit limit) {
    FindingCode code = limit.code();
    String term = CohortWords.term(code);
    String outside =
        limit
            .outside()
            .filter(share -> share.of() >= smallest)
            .map(CohortWords::counted)
            .orElse(CohortWords.NONE);
    String people = people(limit.estimate().people());
    return switch (limit.estimate()) {
      case Estimate.ByRank ranks ->
          Row.of(
              term,
              people,
              CohortWords.between(code, ranks.lower(), ranks.lowerBetween()),
              CohortWords.between(code, ranks.upper(), ranks.upperBetween()),
              outside);
      case Estimate.Robust robust ->
          Row.of(
              term,
              people,
              Printed.of(code, robust.lower()) + ", robust",
              Printed.of(code, robust.upper()) + ", robust",
              outside);
      case Estimate.TooFew few ->
          Row.of(term, people, "too few", "at least " + few.needed() + " people", outside);
    };
  }

  /** How well findings told the cases from the controls. */
  Optional<Section> performance() {
    List<SitePerformance> all = report.site().performance();
    if (all.isEmpty()) {
      return Optional.empty();
    }
    List<Block> blocks = new ArrayList<>();
    boolean isTold = all.stream().anyMatch(p -> p.told().isPresent());
    if (isTold) {
      blocks.add(new Picture(RocFigure.of(all)));
    }
    blocks.add(
        new Table(
            "cases: "
                + String.join(", ", report.groups().cases())
                + "; controls: "
                + String.join(", ", report.groups().controls())
                + "; area with DeLong's interval, cut-off with that of samples drawn anew",
            List.of("finding", "cases", "controls", "area", "best cut-off", "sens. / spec."),
            all.stream().map(this::performance).toList()));
    if (isTold) {
      blocks.add(
          Paragraphs.of(
              "The best cut-off flatters itself: it was chosen in the people in whom it is judged."));
    }
    report
        .site()
        .shareOfBands()
        .filter(share -> share.of() >= smallest)
        .ifPresent(
            s ->
                blocks.add(
                    Paragraphs.of(
                        "Bands in "
                            + CohortWords.counted(s)
                            + " of the people with a typical first attack.")));
    return Optional.of(new Section("How well findings told the cases from the controls", blocks));
  }

  private Row performance(SitePerformance of) {
    String with = people(of.with());
    String without = people(of.without());
    return of.told()
        .map(
            told ->
                Row.of(
                    CohortWords.term(of.code()),
                    with,
                    without,
                    String.format(
                        Locale.ROOT,
                        "%.2f (%.2f to %.2f)",
                        told.area(),
                        told.between().lower(),
                        told.between().upper()),
                    CohortWords.between(of.code(), told.cutOff().value(), told.cutOff().between()),
                    CohortWords.percent(told.cutOff().sensitivity())
                        + " / "
                        + CohortWords.percent(told.cutOff().specificity())))
        .orElse(
            Row.of(
                CohortWords.term(of.code()),
                with,
                without,
                "too few",
                "at least " + of.needed() + " of each",
                CohortWords.NONE));
  }

  /** How given probabilities stand to what became of the people. */
  Optional<Section> calibration() {
    Foretelling all = report.site().foretelling();
    if (all.given().people() < smallest) {
      return Optional.empty();
    }
    String verdict =
        all.holds(fewestInArm)
            .map(
                holds ->
                    holds
                        ? "The probabilities fit the people of this site."
                        : "The probabilities do not fit the people of this site: do not use them"
                            + " here.")
            .orElse(
                "Too few people to tell: at least "
                    + fewestInArm
                    + " with bands and as many without are needed.");
    return Optional.of(
        Section.of(
            "Whether the given probabilities fit",
            Paragraphs.of(verdict),
            new Table(
                "people with a probability and a final diagnosis; expected: counts that would not"
                    + " surprise (95 %)",
                List.of("arm", "people", "it came true in", "foretold", "expected"),
                List.of(
                    arm("with bands", all.arms().getFirst()),
                    arm("without bands", all.arms().getLast()))),
            Paragraphs.of(
                String.format(
                    Locale.ROOT,
                    "Log score %.3f, with the stated prior alone %.3f; Brier score %.3f, with the"
                        + " prior alone %.3f. Less is better.",
                    all.given().logScore(),
                    all.prior().logScore(),
                    all.given().brier(),
                    all.prior().brier()))));
  }

  private Row arm(String name, Arm arm) {
    if (arm.people() < smallest) {
      return Row.of(
          name, people(arm.people()), CohortWords.NONE, CohortWords.NONE, CohortWords.NONE);
    }
    return Row.of(
        name,
        Long.toString(arm.people()),
        Long.toString(arm.happened()),
        Printed.decimals(arm.foretold(), 1),
        arm.expected()
            .map(e -> Printed.decimals(e.lower(), 0) + " to " + Printed.decimals(e.upper(), 0))
            .orElse(CohortWords.NONE));
  }
}
