package cistern.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.report.InventedPuncture;
import cistern.report.Parsed;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class RulerTest {

  private static final InventedPuncture PANEL_2 = InventedPuncture.withLocalSynthesis();
  private static final Ruler RULER = Ruler.of(Facts.standard());

  private static Figure figure(InventedPuncture puncture, FindingCode code) {
    Interpretation of = puncture.interpretation();
    return RULER.toFigure("r", of.findings().get(code), of.panel().panel());
  }

  private static Parsed drawn(InventedPuncture puncture, FindingCode code) {
    return Parsed.of(figure(puncture, code).toSvg());
  }

  private static double markAt(Parsed ruler) {
    return Parsed.number(ruler.all("//*[local-name()='circle']").getFirst(), "cx");
  }

  private static long arrows(Parsed ruler) {
    return ruler.all("//*[local-name()='polygon']").stream()
        .filter(p -> p.getAttribute("class").equals("f-ink"))
        .count();
  }

  @Nested
  class Laws {

    /** On a logarithmic ruler centred on its limit the side of the centre is the verdict. */
    @Test
    void mark_anyIndex_standsOnTheSideOfItsVerdict() {
      SplittableRandom random = new SplittableRandom(3);
      for (int i = 0; i < 100; i++) {
        InventedPuncture puncture = PANEL_2.with(Analyte.IGG, random.nextDouble(10, 180), 11_000);
        Parsed ruler = drawn(puncture, FindingCode.IGG_INDEX);
        boolean isAbove = puncture.findings().get(FindingCode.IGG_INDEX).isAbove();
        assertThat(markAt(ruler) > Ruler.WIDTH / 2).isEqualTo(isAbove);
      }
    }
  }

  @Test
  void mark_valueAtItsLimit_standsInTheMiddle() {
    InventedPuncture atLimit =
        InventedPuncture.empty().with(Sample.csf(Analyte.LACTATE), Interval.of(2.7));
    assertThat(markAt(drawn(atLimit, FindingCode.LACTATE)))
        .isCloseTo(Ruler.WIDTH / 2, within(0.01));
  }

  @Test
  void mark_fraction_standsOnTheWayFromNoneToAll() {
    // 34.75 % (project's sanity table, panel 2) of the 72 units from the middle to the end
    assertThat(markAt(drawn(PANEL_2, FindingCode.IGG_FRACTION)))
        .isCloseTo(Ruler.WIDTH / 2 + 0.3475 * 72, within(0.05));
  }

  @Test
  void mark_amount_standsWhereItsFractionStands() {
    assertThat(markAt(drawn(PANEL_2, FindingCode.IGG_LOCAL)))
        .isCloseTo(markAt(drawn(PANEL_2, FindingCode.IGG_FRACTION)), within(0.02));
  }

  @Test
  void mark_offTheRuler_isAnArrowWithItsNumber() {
    Parsed ruler = drawn(PANEL_2, FindingCode.KAPPA_INDEX);
    assertThat(arrows(ruler)).isEqualTo(1);
    assertThat(ruler.texts("//*[local-name()='text']")).containsExactly("66.08");
  }

  @Test
  void mark_negativeRate_isAnArrowToTheLeft() {
    Parsed ruler = drawn(PANEL_2.with(Analyte.IGG, 23, 11_000), FindingCode.IGG_SYNTHESIS_RATE);
    Element head = ruler.all("//*[local-name()='polygon']").getFirst();
    assertThat(head.getAttribute("points")).startsWith("1,10 ");
    assertThat(ruler.texts("//*[local-name()='text']").getFirst()).startsWith("−");
  }

  @Test
  void mark_censored_isABrokenLineWithAnArrow() {
    Parsed ruler = drawn(PANEL_2.withBelow(Analyte.KAPPA, 0.3), FindingCode.KAPPA_INDEX);
    assertThat(arrows(ruler)).isEqualTo(1);
    assertThat(ruler.all("//*[local-name()='circle']")).isEmpty();
    assertThat(ruler.all("//*[@stroke-dasharray]")).hasSize(1);
  }

  @Test
  void ruler_withoutALimit_saysSo() {
    InventedPuncture lambda = PANEL_2.with(Analyte.LAMBDA, 1, 15);
    assertThat(drawn(lambda, FindingCode.LAMBDA_INDEX).texts("//*[local-name()='text']"))
        .containsExactly("no limit to compare with");
  }

  @Test
  void ruler_withoutAValue_saysSo() {
    assertThat(drawn(PANEL_2, FindingCode.IGA_QUOTIENT).texts("//*[local-name()='text']"))
        .containsExactly("not computed");
    assertThat(figure(PANEL_2, FindingCode.IGA_QUOTIENT).description())
        .isEqualTo("IgA quotient: undetermined; not measured: CSF IgA, serum IgA");
  }

  @Test
  void interval_known_isABarUnderTheMark() {
    Interpretation of = PANEL_2.interpretation();
    Figure figure =
        RULER.toFigure("r", PANEL_2.findings(1.2).get(FindingCode.IGG_INDEX), of.panel().panel());
    Element bar = Parsed.of(figure.toSvg()).all("//*[@class='s-fluid']").getFirst();
    double middle = (Parsed.number(bar, "x1") + Parsed.number(bar, "x2")) / 2;
    assertThat(middle).isCloseTo(markAt(Parsed.of(figure.toSvg())), within(0.01));
    assertThat(figure.description())
        .isEqualTo("IgG index 1.08 (95 % interval 0.90 to 1.29), limit ≤ 0.70: above");
    assertThat(figure.table().rows())
        .containsExactly(List.of("IgG index", "1.08", "0.90 to 1.29", "≤ 0.70", "above"));
  }
}
