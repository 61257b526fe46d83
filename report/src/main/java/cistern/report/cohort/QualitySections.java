package cistern.report.cohort;

import cistern.bands.BandVerdict;
import cistern.cohort.Agreement;
import cistern.cohort.CohortSummary;
import cistern.cohort.ConfidenceInterval;
import cistern.cohort.Distribution;
import cistern.cohort.QualityAmount;
import cistern.cohort.QualityFigure;
import cistern.cohort.Tally;
import cistern.differential.Proportion;
import cistern.finding.Printed;
import cistern.report.cohort.SharesFigure.Shared;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** How a clinic does its punctures, in shares, times and volumes. */
final class QualitySections {

  private static final double TENTH = 0.1;
  private static final double MIDDLE = 0.5;

  private final CohortSummary summary;
  private final int smallest;

  QualitySections(CohortSummary summary, int smallest) {
    this.summary = summary;
    this.smallest = smallest;
  }

  private Optional<Proportion> share(Tally tally) {
    return tally.share().filter(s -> s.of() >= smallest);
  }

  /** What happened how often, drawn and as a table. */
  Section quality() {
    List<Shared> drawn = new ArrayList<>();
    List<Row> rows = new ArrayList<>();
    summary
        .quality()
        .forEach(
            (figure, tally) -> {
              share(tally).ifPresent(s -> drawn.add(new Shared(figure.text(), s)));
              rows.add(row(figure.text(), tally));
            });
    List<Block> blocks = new ArrayList<>();
    if (!drawn.isEmpty()) {
      blocks.add(
          new Picture(
              SharesFigure.of(
                  "quality", "Share of the punctures of which it was recorded", drawn)));
    }
    blocks.add(
        new Table(
            "95 % intervals; what nobody recorded is neither yes nor no",
            List.of("what", "happened", "recorded", "share", "not recorded"), rows));
    return new Section("What happened how often", blocks);
  }

  private Row row(String what, Tally tally) {
    String unknown = Long.toString(tally.unknown());
    return share(tally)
        .map(
            s ->
                Row.of(
                    what,
                    Long.toString(tally.yes()),
                    Long.toString(tally.yes() + tally.no()),
                    CohortWords.share(s),
                    unknown))
        .orElseGet(
            () ->
                // What is left of all would tell how many are in the group.
                Row.of(
                    what,
                    CohortWords.NONE,
                    "under " + smallest,
                    CohortWords.NONE,
                    CohortWords.NONE));
  }

  /** Month by month; nothing when no figure has enough months. */
  Optional<Section> overTime() {
    List<Block> charts = new ArrayList<>();
    for (QualityFigure figure : QualityFigure.values()) {
      RunChart.of(figure, summary.byMonth(), smallest).map(Picture::new).ifPresent(charts::add);
    }
    return charts.isEmpty() ? Optional.empty() : Optional.of(new Section("Month by month", charts));
  }

  /** Headache and patch by needle. */
  Optional<Section> byNeedle() {
    List<Block> blocks = new ArrayList<>();
    List<Row> rows = new ArrayList<>();
    for (QualityFigure figure : List.of(QualityFigure.HEADACHE, QualityFigure.PATCHED)) {
      List<Shared> drawn = new ArrayList<>();
      summary
          .byNeedle()
          .forEach(
              (needle, tallies) -> {
                Tally tally = tallies.getOrDefault(figure, Tally.NONE);
                share(tally).ifPresent(s -> drawn.add(new Shared(needle, s)));
                rows.add(row(figure.text() + ", " + needle, tally));
              });
      if (drawn.size() > 1) {
        blocks.add(
            new Picture(
                SharesFigure.of(
                    "needle-" + figure.code(),
                    CohortWords.sentence(figure.text()) + " by needle",
                    drawn)));
      }
    }
    blocks.add(
        new Table(
            "groups under " + smallest + " are not shown, so that nobody is recognised",
            List.of("needle", "happened", "recorded", "share", "not recorded"),
            rows));
    boolean isRecorded =
        summary.quality().getOrDefault(QualityFigure.HEADACHE, Tally.NONE).share().isPresent();
    return isRecorded
        ? Optional.of(new Section("Headache and patch by needle", blocks))
        : Optional.empty();
  }

  /** Times and volumes. */
  Optional<Section> amounts() {
    List<Row> rows = new ArrayList<>();
    for (QualityAmount amount : QualityAmount.values()) {
      Distribution of = summary.amounts().getOrDefault(amount, Distribution.NONE);
      if (of.moments().count() >= smallest) {
        rows.add(
            Row.of(
                amount.text() + ", " + amount.unit(),
                Long.toString(of.moments().count()),
                quantile(of, TENTH),
                quantile(of, MIDDLE),
                quantile(of, 1 - TENTH)));
      }
    }
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Section.of(
                "Times and volumes",
                new Table(
                    "values under which a tenth, a half and nine tenths lie",
                    List.of("what", "recorded", "a tenth under", "half under", "nine tenths under"),
                    rows)));
  }

  private static String quantile(Distribution of, double share) {
    return Printed.significant(of.spectrum().quantile(share).orElse(0));
  }

  /** A reader against the program, or two readers. */
  Optional<Section> readers() {
    List<BandVerdict> words =
        List.of(BandVerdict.NEGATIVE, BandVerdict.BORDERLINE, BandVerdict.POSITIVE);
    long[][] counts = new long[words.size()][words.size()];
    long all = 0;
    for (int i = 0; i < words.size(); i++) {
      for (int j = 0; j < words.size(); j++) {
        counts[i][j] =
            summary
                .gels()
                .getOrDefault(words.get(i), Collections.emptySortedMap())
                .getOrDefault(words.get(j), 0L);
        all += counts[i][j];
      }
    }
    if (all < smallest) {
      return Optional.empty();
    }
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      rows.add(
          Row.of(
              words.get(i).word(),
              Long.toString(counts[i][0]),
              Long.toString(counts[i][1]),
              Long.toString(counts[i][2])));
    }
    return Optional.of(
        Section.of(
            "Two readings of the same gel",
            Paragraphs.of(agreement(counts)),
            new Table(
                "rows: what counts; columns: the program or the second reader",
                List.of("bands", "negative", "borderline", "positive"),
                rows)));
  }

  private static String agreement(long[][] counts) {
    return Agreement.of(counts)
        .map(
            found -> {
              ConfidenceInterval interval = found.interval(CohortWords.CONFIDENCE);
              return "Beyond chance the two agree with κ %s (95 %% interval %s to %s; %d gels)."
                  .formatted(
                      Printed.decimals(found.kappa(), 2),
                      Printed.decimals(interval.lower(), 2),
                      Printed.decimals(interval.upper(), 2),
                      found.cases());
            })
        .orElse("Both used one word only: there is no κ.");
  }
}
