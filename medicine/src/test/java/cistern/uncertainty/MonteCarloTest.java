package cistern.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Uncertainty;
import cistern.measurement.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Every interval and every probability against a simulation that shares nothing with the product.
 * Source of the tolerances: project rule (probability 0.003, interval ends 1 % of the value or of
 * the interval's width). An end agrees when the simulated shares under end ± tolerance enclose the
 * share that the end stands for.
 */
class MonteCarloTest {

  private static final double PROBABILITY = 0.003;
  private static final double END = 0.01;
  private static final double TAIL = 0.025;

  /** Standard errors that a simulated share may be off by chance. */
  private static final double SAMPLING = 4;

  private static final int BLOCK = 1000;

  /** What is counted for one finding of one panel. */
  private static final class Tally {

    private final String name;
    private final Finding finding;
    private final int code;
    private final double[] edges;
    private final long[] under;
    private long above;

    Tally(int number, Finding finding) {
      this.name = "panel " + number + " " + finding.code().code();
      this.finding = finding;
      this.code = MonteCarlo.at(finding.code());
      this.edges = finding.uncertainty().interval95().map(i -> edges(finding, i)).orElse(EMPTY);
      this.under = new long[edges.length];
    }

    private static final double[] EMPTY = {};

    private static double[] edges(Finding finding, Interval interval) {
      double value = Math.abs(finding.number().orElse(0));
      double tolerance = END * Math.max(value, interval.upper() - interval.lower());
      return new double[] {
        interval.lower() - tolerance,
        interval.lower() + tolerance,
        interval.upper() - tolerance,
        interval.upper() + tolerance
      };
    }

    boolean isProbability() {
      return finding.uncertainty().probabilityAbove().isPresent();
    }

    void count(MonteCarlo draw) {
      double value = draw.values[code];
      for (int i = 0; i < edges.length; i += 2) {
        under[i] += value < edges[i] ? 1 : 0;
        under[i + 1] += value <= edges[i + 1] ? 1 : 0;
      }
      above += draw.isAbove[code] ? 1 : 0;
    }

    /** What disagrees, in words. */
    List<String> check(double draws) {
      List<String> wrong = new ArrayList<>();
      finding
          .uncertainty()
          .probabilityAbove()
          .ifPresent(
              p -> {
                if (Math.abs(p - above / draws) > PROBABILITY) {
                  wrong.add(name + ": probability " + p + ", drawn " + above / draws);
                }
              });
      for (int end = 0; end < edges.length / 2; end++) {
        double share = end == 0 ? TAIL : 1 - TAIL;
        double chance = SAMPLING * Math.sqrt(TAIL * (1 - TAIL) / draws);
        if (under[2 * end] / draws > share + chance
            || under[2 * end + 1] / draws < share - chance) {
          wrong.add(name + ": an end between " + edges[2 * end] + " and " + edges[2 * end + 1]);
        }
      }
      return wrong;
    }
  }

  private record Outcome(
      List<String> wrong, long probabilities, long intervals, Set<FindingCode> of) {}

  /** One panel with its own simulation and its counts. */
  private record Subject(MonteCarlo model, List<Tally> tallies) {

    static Subject of(int number) {
      Interpreted interpreted = Interpreted.of(RandomPanels.of(number));
      return new Subject(
          new MonteCarlo(interpreted.panel().panel()),
          interpreted.findings().all().stream()
              .filter(f -> !f.uncertainty().equals(Uncertainty.NONE))
              .map(f -> new Tally(number, f))
              .toList());
    }

    void count(double[][] block) {
      for (double[] normals : block) {
        model.draw(normals, 1);
        for (Tally tally : tallies) {
          tally.count(model);
        }
      }
    }
  }

  /**
   * All panels see the same draws; each keeps its own counts, so that they may run side by side.
   */
  private static Outcome compare(IntStream numbers, int draws) {
    List<Subject> subjects = numbers.mapToObj(Subject::of).toList();
    Random random = new Random(20_310_302L);
    double[][] block = new double[BLOCK][MonteCarlo.inputs()];
    for (int done = 0; done < draws; done += BLOCK) {
      for (double[] normals : block) {
        Arrays.setAll(normals, i -> random.nextGaussian());
      }
      subjects.parallelStream().forEach(s -> s.count(block));
    }
    return outcome(subjects.stream().flatMap(s -> s.tallies().stream()).toList(), draws);
  }

  private static Outcome outcome(List<Tally> tallies, int draws) {
    Set<FindingCode> covered = EnumSet.noneOf(FindingCode.class);
    tallies.forEach(t -> covered.add(t.finding.code()));
    return new Outcome(
        tallies.stream().flatMap(t -> t.check(draws).stream()).toList(),
        tallies.stream().filter(Tally::isProbability).count(),
        tallies.stream().filter(t -> t.edges.length > 0).count(),
        covered);
  }

  private static void toTable(Outcome outcome, String how) {
    OutsideCheck.of(
            "Probabilities and 95 % intervals of every finding, " + how,
            "simulation with formulas of its own",
            "probability 0.003; ends 1 % of the value or of the width")
        .toTable(
            "%d probabilities and %d intervals agree"
                .formatted(outcome.probabilities(), outcome.intervals()));
  }

  @Test
  void measure_twentyPanels_agreesWithHalfAMillionDraws() {
    Outcome outcome = compare(IntStream.range(0, 20), 500_000);

    assertThat(outcome.wrong()).isEmpty();
    assertThat(outcome.of()).containsExactlyInAnyOrder(FindingCode.values());
    toTable(outcome, "20 panels of 500,000 draws");
  }

  @Test
  @Tag("long")
  void measure_fiveHundredPanels_agreesWithAMillionDraws() {
    Outcome outcome = compare(IntStream.range(0, 500), 1_000_000);

    assertThat(outcome.wrong()).isEmpty();
    assertThat(outcome.of()).containsExactlyInAnyOrder(FindingCode.values());
    toTable(outcome, "500 panels of 1,000,000 draws");
  }
}
