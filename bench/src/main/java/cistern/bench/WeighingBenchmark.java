package cistern.bench;

import cistern.analysis.Puncture;
import cistern.bands.BandCounts;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.criteria.Count;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.differential.Prior;
import cistern.measurement.Answer;
import cistern.urgent.Alerts;
import cistern.weighing.ClinicalPicture;
import cistern.weighing.Weighed;
import cistern.weighing.Weighing;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One work-up weighed on one core: both editions with all sufficient sets, the differential with
 * intervals, red flags and next steps.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
public class WeighingBenchmark {

  private static final BandReport SIX =
      new BandReport.Counted(
          BandCounts.of(6, 0, 0), Optional.empty(), BandReport.Origin.UNKNOWN, Optional.empty());

  private final Weighing weighing = Weighing.of(InventedPanels.FACTS);
  private final InventedPanels.Subject subject = InventedPanels.whole(1).getFirst();
  private final Puncture usual = puncture(SIX);
  private final ClinicalPicture attacked = clinical(firstAttack());
  private final Puncture open = puncture(new BandReport.NotReported());
  private final ClinicalPicture unknown =
      clinical(Evidence.UNKNOWN.withPresentation(Presentation.ATTACK));

  private Puncture puncture(BandReport bands) {
    return new Puncture(
        "invented",
        subject.panel(),
        subject.findings(),
        BandReading.of(bands, InventedPanels.FACTS));
  }

  private static ClinicalPicture clinical(Evidence evidence) {
    return new ClinicalPicture(evidence, Optional.of(new Prior(0.3, 0.6, Answer.YES)), List.of());
  }

  private static Evidence firstAttack() {
    return new Evidence(
        Presentation.ATTACK,
        Count.of(1),
        Count.of(1),
        Map.of(
            Item.NO_BETTER_EXPLANATION, Answer.YES,
            Item.PERIVENTRICULAR, Answer.YES,
            Item.INFRATENTORIAL, Answer.YES,
            Item.CORTICAL_JUXTACORTICAL, Answer.NO));
  }

  /** A first attack with bands: the usual case. */
  @Benchmark
  public Weighed usualCase() {
    return weighing.weigh(usual, attacked, Alerts.NONE);
  }

  /** An attack of which nothing else is known: the most completions. */
  @Benchmark
  public Weighed nothingKnown() {
    return weighing.weigh(open, unknown, Alerts.NONE);
  }
}
