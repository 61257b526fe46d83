package cistern.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class RepeatChangeTest {

  /** Project rule, as for every other probability. */
  private static final double TOLERANCE = 0.003;

  /** Standard errors that a simulated share may be off by chance. */
  private static final double SAMPLING = 4;

  private static Panel albumin(double csf, double cv) {
    return Samples.none()
        .with(Sample.csf(Analyte.ALBUMIN), csf, cv)
        .with(Sample.serum(Analyte.ALBUMIN), 40_000, 0)
        .aged(30);
  }

  @Nested
  class Published {

    /** How far a simulation of repeated panels is off at most. */
    private static double worst(int number, int draws) {
      Interpreted interpreted = Interpreted.of(RandomPanels.of(number));
      RepeatChange repeat = interpreted.repeat();
      MonteCarlo model = new MonteCarlo(interpreted.panel().panel());
      List<FindingCode> counted = List.copyOf(repeat.each().keySet());
      Verdict[] first =
          counted.stream().map(interpreted.findings()::verdict).toArray(Verdict[]::new);
      int[] places = counted.stream().mapToInt(MonteCarlo::at).toArray();
      long[] each = new long[first.length];
      Random random = new Random(number);
      double[] normals = new double[MonteCarlo.inputs()];
      for (int draw = 0; draw < draws; draw++) {
        Arrays.setAll(normals, i -> random.nextGaussian());
        model.draw(normals, Math.sqrt(2));
        for (int i = 0; i < first.length; i++) {
          if (model.verdicts[places[i]] != first[i]) {
            each[i]++;
          }
        }
      }
      double worst = 0;
      for (int i = 0; i < first.length; i++) {
        double stated = repeat.each().getOrDefault(counted.get(i), Double.NaN);
        worst = Math.max(worst, deviation(stated, each[i], draws));
      }
      return worst;
    }

    /** How far a stated chance is off, beyond what the simulation itself may be off by chance. */
    private static double deviation(double stated, long counted, double draws) {
      double share = counted / draws;
      double chance = SAMPLING * Math.sqrt(share * (1 - share) / draws);
      return Math.max(0, Math.abs(stated - share) - chance);
    }

    private static void compare(IntStream numbers, int draws) {
      int[] panels = numbers.toArray();
      double worst =
          IntStream.of(panels).parallel().mapToDouble(n -> worst(n, draws)).max().orElse(1);

      assertThat(worst).isLessThan(TOLERANCE);
      OutsideCheck.of(
              "Chance that a repeated panel changes a verdict, %d panels".formatted(panels.length),
              "simulation with formulas of its own",
              "absolute 0.003")
          .toTable(worst);
    }

    /** Two of them have an antibody, or IgG, that is known far better than albumin. */
    @Test
    void repeat_eightPanels_agreesWithSimulation() {
      compare(IntStream.of(0, 1, 2, 3, 4, 5, 23, 111), 300_000);
    }

    @Test
    @Tag("long")
    void repeat_hundredPanels_agreesWithSimulation() {
      compare(IntStream.range(0, 100), 1_000_000);
    }
  }

  @Nested
  class Laws {

    @Test
    void repeat_atTheLimit_changesHalfTheTime() {
      // 30 years: limit 6.0·10⁻³ (contract); just under it a repeat falls on either side alike.
      RepeatChange repeat = Interpreted.of(albumin(239.999999, 0.05)).repeat();

      assertThat(repeat.each().get(FindingCode.ALBUMIN_QUOTIENT)).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void repeat_ofOneInput_hasTwiceTheVariance() {
      // closed form: z = ln(6.0/5.4) / √(2·ln(1 + 0.08²)) = 0.932751, 1 − Φ(z) = 0.175474
      RepeatChange repeat = Interpreted.of(albumin(216, 0.08)).repeat();

      assertThat(repeat.each()).containsOnlyKeys(FindingCode.ALBUMIN_QUOTIENT);
      assertThat(repeat.likeliest().orElseThrow().getValue()).isCloseTo(0.175474, within(1e-5));
    }

    @Test
    void repeat_withoutError_changesNothing() {
      RepeatChange repeat = Interpreted.of(albumin(216, 0)).repeat();

      assertThat(repeat.each().values()).isNotEmpty().allMatch(chance -> chance == 0);
    }

    @Test
    void repeat_ofNothing_changesNothing() {
      RepeatChange repeat = Interpreted.of(Panel.of(Person.UNKNOWN, List.of())).repeat();

      assertThat(repeat.each()).isEmpty();
      assertThat(repeat.likeliest()).isEmpty();
    }
  }
}
