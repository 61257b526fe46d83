package cistern.barrier;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.fact.Status;
import cistern.measurement.Analyte;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class HyperbolaTest {

  private static final Facts FACTS = Facts.standard();
  private static final QuotientLimits IGG = QuotientLimits.of(FACTS, Analyte.IGG);

  /** Closed form with the constants of 1994; computed outside this program, × 10³. */
  private static final double[][] TABLE = {
    {1, .271577, .55, .760549, .672214, .27},
    {2, .508332, .851666, 1.240918, .901037, .360804},
    {3, .794486, 1.280019, 1.901875, 1.255778, .509737},
    {5, 1.414730, 2.333966, 3.478021, 2.234716, .967868},
    {7, 2.056671, 3.507392, 5.197065, 3.433667, 1.61},
    {10, 3.032837, 5.354998, 7.874936, 5.439713, 2.837706},
    {15, 4.671951, 8.521819, 12.434776, 9.025972, 5.344698},
    {20, 6.316479, 11.729357, 17.038981, 12.736562, 8.178351},
    {30, 9.610994, 18.186475, 26.292846, 20.293305, 14.298084},
    {50, 16.206599, 31.151958, 44.855767, 35.576695, 27.194577}
  };

  @Nested
  class Published {

    @Test
    void limits_atTenAlbuminQuotients_areThoseOfTheTable() {
      for (double[] row : TABLE) {
        double q = row[0] * 1e-3;
        assertThat(IGG.lower().orElseThrow().at(q) * 1e3).isCloseTo(row[1], within(1e-6));
        assertThat(IGG.mean().orElseThrow().at(q) * 1e3).isCloseTo(row[2], within(1e-6));
        assertThat(IGG.upper().at(q) * 1e3).isCloseTo(row[3], within(1e-6));
        assertThat(upper(Analyte.IGA, q) * 1e3).isCloseTo(row[4], within(1e-6));
        assertThat(upper(Analyte.IGM, q) * 1e3).isCloseTo(row[5], within(1e-6));
      }
      OutsideCheck.of(
              "Low, mean and limit of IgG, limits of IgA and IgM at ten albumin quotients",
              "closed form, constants of 1994, computed outside",
              "1e-9")
          .toTable("50 of 50 agree");
    }

    /** Reiber and Felgenhauer 1987 as printed, at QAlb 5e-3 and 10e-3; computed outside. */
    @Test
    void limits_byTheConstantsOf1987_areThoseOfTheFormulaAndStandAlone() {
      Policy.Change change = new Policy.Change(new FactValue.Word("reiber-1987"), "test");
      Facts facts = FACTS.with(new Policy("old", Map.of(QuotientLimits.RULE_KEY, change)));
      double[][] printed = {{3.260, 6.779}, {2.278, 4.560}, {1.099, 2.777}};
      Analyte[] classes = {Analyte.IGG, Analyte.IGA, Analyte.IGM};
      for (int i = 0; i < classes.length; i++) {
        QuotientLimits limits = QuotientLimits.of(facts, classes[i]);
        assertThat(limits.upper().at(5e-3) * 1e3).isCloseTo(printed[i][0], within(5e-4));
        assertThat(limits.upper().at(10e-3) * 1e3).isCloseTo(printed[i][1], within(5e-4));
        assertThat(limits.mean()).isEmpty();
        assertThat(limits.lower()).isEmpty();
        assertThat(limits.rule()).isEqualTo("reiber-1987");
        assertThat(limits.grounds().status()).isEqualTo(Status.READ);
      }
      assertThat(QuotientLimits.of(facts, Analyte.KAPPA).rule()).isEqualTo("reiber-2019");
    }

    /** Reiber 2019 as printed, at QAlb 5e-3: 16.704 × 10⁻³. */
    @Test
    void limit_ofKappa_isThePrintedFormula() {
      assertThat(upper(Analyte.KAPPA, 5e-3) * 1e3).isCloseTo(16.704, within(5e-4));
      assertThat(upper(Analyte.KAPPA, 20e-3) * 1e3).isCloseTo(59.844, within(5e-4));
      assertThat(QuotientLimits.of(FACTS, Analyte.KAPPA).mean().orElseThrow().at(10e-3) * 1e3)
          .isCloseTo(17.619, within(1e-3));
    }

    /** Roots of (a² − 0.49)Q² − 1.4cQ + (a²b² − c²) = 0, closed form. */
    @Test
    void crossings_ofIndexAndLimit_areTheRoots() {
      IndexCrossing crossing = IndexCrossing.igg(FACTS);

      assertThat(crossing.crossings()).hasSize(2);
      assertThat(crossing.crossings().getFirst()).isCloseTo(1.188721e-3, within(1e-9));
      assertThat(crossing.crossings().getLast()).isCloseTo(5.159639e-3, within(1e-9));
      OutsideCheck.of(
              "Where index 0.7 crosses the IgG limit",
              "closed form, 1.188721e-3 and 5.159639e-3",
              "1e-9")
          .toTable("agrees");
    }

    /** √((ab²/c)² − b²) = 2.184912e-3 with value 0.6190584248 (a is the column a/b). */
    @Test
    void ratio_ofLimitToAlbuminQuotient_hasItsMinimumWhereTheClosedFormSays() {
      double at = 2.184912e-3;
      double minimum = IGG.upper().at(at) / at;

      assertThat(minimum).isCloseTo(0.6190584248, within(1e-9));
      assertThat(IGG.upper().at(at * 0.99) / (at * 0.99)).isGreaterThan(minimum);
      assertThat(IGG.upper().at(at * 1.01) / (at * 1.01)).isGreaterThan(minimum);
      OutsideCheck.of(
              "Minimum of the IgG limit over the albumin quotient",
              "closed form, 0.6190584248 at 2.184912e-3",
              "1e-9")
          .toTable("agrees");
    }
  }

  @Nested
  class Laws {

    @Test
    void limit_everywhere_risesAndIsConvexAndStaysOverItsAsymptote() {
      Hyperbola upper = IGG.upper();
      double before = upper.at(0);
      double slopeBefore = 0;
      assertThat(before).isCloseTo(5.7803e-4, within(1e-8));
      for (double q = 1e-4; q < 0.15; q += 1e-4) {
        double now = upper.at(q);
        double slope = now - before;
        assertThat(now).isGreaterThan(before);
        assertThat(slope).isGreaterThanOrEqualTo(slopeBefore - 1e-15);
        assertThat(now).isGreaterThan(upper.slope() * q - upper.c());
        before = now;
        slopeBefore = slope;
      }
    }

    @Test
    void curves_inTheEstablishedRange_keepTheirOrder() {
      for (Analyte analyte : new Analyte[] {Analyte.IGG, Analyte.IGA, Analyte.IGM}) {
        QuotientLimits limits = QuotientLimits.of(FACTS, analyte);
        for (double q = 0.5e-3; q <= 150e-3; q *= 1.05) {
          double mean = limits.mean().orElseThrow().at(q);
          assertThat(limits.lower().orElseThrow().at(q)).isLessThan(mean);
          assertThat(mean).isLessThan(limits.upper().at(q));
        }
      }
    }

    @Test
    void limit_betweenTheCrossings_liesUnderTheIndex() {
      List<Double> ends = IndexCrossing.igg(FACTS).crossings();
      double index = FACTS.number("igg-index.upper");
      ToDoubleFunction<Double> over =
          q -> QuotientLimits.of(FACTS, Analyte.IGG).upper().at(q) - index * q;

      assertThat(over.applyAsDouble(ends.getFirst() * 0.9)).isPositive();
      assertThat(over.applyAsDouble((ends.getFirst() + ends.getLast()) / 2)).isNegative();
      assertThat(over.applyAsDouble(ends.getLast() * 1.1)).isPositive();
    }

    @Test
    void crossing_ofKappa_isTheOneWhereBothAreEqual() {
      IndexCrossing crossing = IndexCrossing.kappa(FACTS);
      double at = crossing.crossings().getFirst();

      assertThat(crossing.crossings()).hasSize(1);
      assertThat(crossing.limit().at(at)).isCloseTo(crossing.index() * at, within(1e-12));
    }

    @Test
    void crossing_ofAnIndexUnderTheMinimum_isNone() {
      assertThat(new IndexCrossing(0.5, IGG.upper()).crossings()).isEmpty();
    }
  }

  private static double upper(Analyte analyte, double q) {
    return QuotientLimits.of(FACTS, analyte).upper().at(q);
  }
}
