package cistern.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.fact.Facts;
import cistern.finding.Findings;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Person;
import cistern.report.InventedPuncture;
import cistern.report.Parsed;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Element;

class QuotientDiagramTest {

  private static final Facts FACTS = Facts.standard();
  private static final InventedPuncture PANEL_2 = InventedPuncture.withLocalSynthesis();

  private static Figure figure(Protein protein, Findings findings, EarlierPuncture... earlier) {
    return QuotientDiagram.of(FACTS, protein).toFigure("d", findings, List.of(earlier));
  }

  private static Parsed drawn(Protein protein, Findings findings, EarlierPuncture... earlier) {
    return Parsed.of(figure(protein, findings, earlier).toSvg());
  }

  private static Plane plane(Protein protein) {
    return QuotientDiagram.of(FACTS, protein).curves().plane();
  }

  private static List<String> labels(Parsed figure) {
    return figure.texts("//*[local-name()='text']");
  }

  private static List<Element> shapes(Parsed figure, String name) {
    return figure.all("//*[local-name()='%s']".formatted(name));
  }

  private static List<Element> arrows(Parsed figure) {
    return shapes(figure, "polygon").stream()
        .filter(p -> p.getAttribute("class").equals("f-ink"))
        .toList();
  }

  @Nested
  class Published {

    /**
     * Limits at QAlb 5, 20 and 100 × 10⁻³ (Reiber 1994 and 2019 as in the project's sanity table);
     * a pixel is about 1 % of a quotient.
     */
    @ParameterizedTest
    @CsvSource({
      "IGG, 5, 3.478", "IGG, 20, 17.039", "IGG, 100, 91.328",
      "IGA, 5, 2.235", "IGA, 20, 12.737", "IGA, 100, 73.988",
      "IGM, 5, 0.968", "IGM, 20, 8.178", "IGM, 100, 60.301",
      "KAPPA, 5, 16.704", "KAPPA, 20, 59.844", "KAPPA, 100, 319.339"
    })
    void curves_limit_passesThroughThePublishedPoints(Protein protein, double alb, double limit) {
      Plane plane = plane(protein);
      Element curve =
          shapes(drawn(protein, PANEL_2.findings()), "polyline").stream()
              .filter(p -> p.getAttribute("stroke-width").equals("2"))
              .findFirst()
              .orElseThrow();
      double x = plane.x().at(alb / 1000);
      assertThat(heightAt(curve, x)).isCloseTo(plane.y().at(limit / 1000), within(0.3));
    }

    /** 1 − Qlim/Q over both ends of the line is the share at the point, 35 % of panel 2. */
    @Test
    void excess_fromTheLimitToThePoint_isTheShareWrittenAtIt() {
      Parsed figure = drawn(Protein.IGG, PANEL_2.findings());
      Element line =
          shapes(figure, "line").stream()
              .filter(p -> p.getAttribute("class").equals("s-fluid"))
              .findFirst()
              .orElseThrow();
      Plane plane = plane(Protein.IGG);
      double up = Parsed.number(line, "y2") - Parsed.number(line, "y1");
      double decades = up / plane.y().length(Math.log(10));
      assertThat(1 - Math.pow(10, -decades)).isCloseTo(0.35, within(0.005));
      assertThat(labels(figure)).contains("35 %");
    }

    /** The height of a line at some x, between its two nearest corners. */
    private static double heightAt(Element line, double x) {
      double[][] corners =
          Arrays.stream(line.getAttribute("points").split(" ", -1))
              .map(p -> Arrays.stream(p.split(",", -1)).mapToDouble(Double::parseDouble).toArray())
              .toArray(double[][]::new);
      for (int i = 1; i < corners.length; i++) {
        if (corners[i][0] >= x) {
          double share = (x - corners[i - 1][0]) / (corners[i][0] - corners[i - 1][0]);
          return corners[i - 1][1] + share * (corners[i][1] - corners[i - 1][1]);
        }
      }
      throw new IllegalArgumentException("the line ends before " + x);
    }
  }

  @Nested
  class Laws {

    /** A bivariate log-normal without correlation: 95 % of repeats fall into the region. */
    @Test
    void region_ofManyRepeats_holdsNinetyFivePerCent() {
      double sigma = 0.07;
      Findings findings = PANEL_2.findings(Math.exp(1.959963984540054 * sigma));
      Element ellipse = shapes(drawn(Protein.IGG, findings), "ellipse").getFirst();
      Plane plane = plane(Protein.IGG);
      SplittableRandom random = new SplittableRandom(95);
      int draws = 200_000;
      int inside = 0;
      for (int i = 0; i < draws; i++) {
        double albumin = 220.0 / 42_000 * Math.exp(sigma * random.nextGaussian());
        double igg = 62.0 / 11_000 * Math.exp(sigma * random.nextGaussian());
        double dx =
            (plane.x().at(albumin) - Parsed.number(ellipse, "cx")) / Parsed.number(ellipse, "rx");
        double dy =
            (plane.y().at(igg) - Parsed.number(ellipse, "cy")) / Parsed.number(ellipse, "ry");
        inside += dx * dx + dy * dy <= 1 ? 1 : 0;
      }
      assertThat((double) inside / draws).isCloseTo(0.95, within(0.003));
    }

    /** Whatever the values, every coordinate lies inside the figure. */
    @Test
    void toFigure_anyValues_staysInside() {
      SplittableRandom random = new SplittableRandom(11);
      for (int i = 0; i < 200; i++) {
        InventedPuncture puncture =
            InventedPuncture.empty()
                .with(Analyte.ALBUMIN, tenTo(random, 0, 6), tenTo(random, 2, 6))
                .with(Analyte.IGG, tenTo(random, -2, 6), tenTo(random, 1, 6));
        Parsed figure = drawn(Protein.IGG, puncture.findings());
        for (Element circle : shapes(figure, "circle")) {
          assertThat(Parsed.number(circle, "cx")).isBetween(0.0, Plane.WIDTH);
          assertThat(Parsed.number(circle, "cy")).isBetween(0.0, Plane.HEIGHT);
        }
        List<Element> triangles =
            shapes(figure, "polygon").stream()
                .filter(p -> p.getAttribute("class").endsWith("f-ink"))
                .toList();
        int marks = triangles.size() + shapes(figure, "circle").size();
        assertThat(marks).as("one mark or one arrow").isPositive();
      }
    }

    private static double tenTo(SplittableRandom random, double from, double to) {
      return Math.pow(10, random.nextDouble(from, to));
    }
  }

  @Nested
  class Words {

    @Test
    void title_above_saysHowMuchWasMadeInside() {
      assertThat(figure(Protein.IGG, PANEL_2.findings()).title())
          .isEqualTo("IgG quotient above its limit: 35 % made within the CNS");
    }

    @Test
    void title_within_neverSaysThatThereIsNone() {
      Findings within = PANEL_2.with(Analyte.IGG, 30, 11_000).findings();
      assertThat(figure(Protein.IGG, within).title())
          .isEqualTo("IgG quotient within its limit: local synthesis not demonstrated");
    }

    @Test
    void title_underTheLowest_saysSo() {
      Findings below = PANEL_2.with(Analyte.IGG, 5, 11_000).findings();
      assertThat(figure(Protein.IGG, below).title()).contains("under the lowest plausible value");
    }

    @Test
    void description_always_holdsTheNumbers() {
      assertThat(figure(Protein.IGG, PANEL_2.findings()).description())
          .contains("Albumin quotient 5.24", "IgG quotient 5.64", "Age limit of albumin 6.33")
          .contains("Limit of IgG there 3.68");
    }

    @Test
    void table_always_holdsWhatIsDrawn() {
      EarlierPuncture earlier =
          new EarlierPuncture("1", PANEL_2.with(Analyte.IGG, 30, 11_000).findings());
      FigureTable table = figure(Protein.IGG, PANEL_2.findings(1.1), earlier).table();
      assertThat(table.rows())
          .extracting(List::getFirst)
          .containsExactly("this puncture", "its 95 % interval", "earlier puncture 1");
      assertThat(table.rows().getFirst())
          .containsExactly("this puncture", "5.24", "5.64", "3.68", "2.47", "1.49");
      assertThat(table.rows().get(1)).contains("4.76–5.76", "5.12–6.20");
    }

    @Test
    void toSvg_always_hasTitleDescriptionAndRole() {
      Parsed figure = drawn(Protein.IGG, PANEL_2.findings());
      assertThat(figure.document().getDocumentElement().getAttribute("role")).isEqualTo("img");
      assertThat(figure.all("//*[@id='d-title']")).hasSize(1);
      assertThat(figure.all("//*[@id='d-desc']")).hasSize(1);
    }

    @ParameterizedTest
    @EnumSource(Protein.class)
    void labels_ofTheField_nameEveryCurveDirectly(Protein protein) {
      List<String> labels = labels(drawn(protein, PANEL_2.findings()));
      assertThat(labels)
          .contains("limit", "mean", "age limit 6.33", "albumin quotient × 10³")
          .doesNotContain("from the blood", "20 %", "80 %");
      assertThat(labels.contains("lowest")).isEqualTo(protein != Protein.KAPPA);
    }
  }

  @Nested
  class Edges {

    @Test
    void mark_valueOverTheScale_isAnArrowWithItsNumber() {
      Parsed figure = drawn(Protein.IGG, PANEL_2.with(Analyte.IGG, 4_000, 8_000).findings());
      assertThat(arrows(figure)).hasSize(1);
      assertThat(labels(figure)).contains("500.00");
      assertThat(shapes(figure, "ellipse")).isEmpty();
    }

    @Test
    void mark_bothOffTheScale_isOneArrowWithBothNumbers() {
      Findings off =
          PANEL_2.with(Analyte.IGG, 4_000, 8_000).with(Analyte.ALBUMIN, 12_000, 40_000).findings();
      Parsed figure = drawn(Protein.IGG, off);
      assertThat(arrows(figure)).hasSize(1);
      assertThat(labels(figure)).contains("500.00, albumin 300.00");
    }

    @Test
    void mark_censoredBelow_isAnArrowDownwardsFromItsBound() {
      Findings below = PANEL_2.withBelow(Analyte.KAPPA, 0.3).findings();
      Figure figure = figure(Protein.KAPPA, below);
      Parsed drawn = Parsed.of(figure.toSvg());
      assertThat(arrows(drawn)).hasSize(1);
      assertThat(shapes(drawn, "ellipse")).isEmpty();
      assertThat(figure.description()).contains("κ quotient below 23.08");
    }

    @Test
    void mark_censoredAbove_isAnArrowUpwards() {
      Figure figure = figure(Protein.KAPPA, PANEL_2.withAbove(Analyte.KAPPA, 4).findings());
      assertThat(arrows(Parsed.of(figure.toSvg()))).hasSize(1);
      assertThat(figure.description()).contains("κ quotient above 307.69");
    }

    @Test
    void mark_bothCensored_isABoxWithTwoArrows() {
      Findings both =
          PANEL_2.withBelow(Analyte.KAPPA, 0.3).withBelow(Analyte.ALBUMIN, 200).findings();
      Parsed figure = drawn(Protein.KAPPA, both);
      assertThat(arrows(figure)).hasSize(2);
      assertThat(shapes(figure, "rect").stream().filter(r -> r.hasAttribute("stroke-dasharray")))
          .hasSize(1);
    }

    @Test
    void mark_missing_isLeftOutAndSaidSo() {
      Figure figure = figure(Protein.IGA, PANEL_2.findings());
      Parsed drawn = Parsed.of(figure.toSvg());
      assertThat(shapes(drawn, "circle")).isEmpty();
      assertThat(labels(drawn)).contains("no point: not measured");
      assertThat(figure.title())
          .isEqualTo("IgA quotient not drawn: not measured: CSF IgA, serum IgA");
      assertThat(figure.table().rows().getFirst()).contains("not measured");
    }

    @Test
    void mark_zero_isAnArrowDownwards() {
      Findings zero = PANEL_2.with(Sample.csf(Analyte.IGG), Interval.of(0)).findings();
      assertThat(arrows(drawn(Protein.IGG, zero))).hasSize(1);
    }

    @Test
    void ageLimit_withoutAge_isLeftOut() {
      Parsed figure = drawn(Protein.IGG, PANEL_2.with(Person.UNKNOWN).findings());
      assertThat(labels(figure)).noneMatch(l -> l.startsWith("age limit"));
      assertThat(shapes(figure, "circle")).isNotEmpty();
    }

    @Test
    void earlier_punctures_areSmallAndNumbered() {
      EarlierPuncture on =
          new EarlierPuncture("1", PANEL_2.with(Analyte.IGG, 30, 11_000).findings());
      EarlierPuncture off =
          new EarlierPuncture("2", PANEL_2.with(Analyte.IGG, 4_000, 8_000).findings());
      EarlierPuncture none = new EarlierPuncture("3", InventedPuncture.empty().findings());
      Figure figure = figure(Protein.IGG, PANEL_2.findings(), on, off, none);
      Parsed drawn = Parsed.of(figure.toSvg());
      assertThat(labels(drawn)).contains("1", "2").doesNotContain("3");
      assertThat(arrows(drawn)).hasSize(1);
      assertThat(figure.description()).contains("Earlier puncture 3: albumin not measured");
    }

    @Test
    void toFigure_inACountryWithCommas_isTheSame() {
      String before = figure(Protein.IGG, PANEL_2.findings()).toSvg().toText();
      Locale standard = Locale.getDefault();
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      try {
        assertThat(figure(Protein.IGG, PANEL_2.findings()).toSvg().toText()).isEqualTo(before);
      } finally {
        Locale.setDefault(standard);
      }
    }
  }
}
