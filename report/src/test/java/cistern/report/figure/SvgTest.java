package cistern.report.figure;

import static cistern.report.look.Token.INK;
import static org.assertj.core.api.Assertions.assertThat;

import cistern.report.Parsed;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.markup.Element;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class SvgTest {

  @Test
  void number_any_isShortFiniteAndWithoutExponent() {
    assertThat(Svg.number(1.005)).isEqualTo("1");
    assertThat(Svg.number(1.236)).isEqualTo("1.24");
    assertThat(Svg.number(-0.001)).isEqualTo("0");
    assertThat(Svg.number(1e-12)).isEqualTo("0");
    assertThat(Svg.number(100)).isEqualTo("100");
    assertThat(Svg.number(Double.NaN)).isEqualTo("0");
    assertThat(Svg.number(Double.POSITIVE_INFINITY)).isEqualTo("100000");
  }

  @Test
  void number_withACommaLocale_keepsThePoint() {
    Locale before = Locale.getDefault();
    Locale.setDefault(Locale.GERMANY);
    try {
      assertThat(Svg.number(1.5)).isEqualTo("1.5");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void shape_withAPen_hasColourAsAttributeAndAsClass() {
    Element line = Svg.line(new Spot(0, 0), new Spot(1, 1), Pen.line(INK, 2).withDash("1 2"));
    assertThat(line.attributes())
        .containsEntry("class", "s-ink")
        .containsEntry("stroke", Pen.colour(INK))
        .containsEntry("fill", "none")
        .containsEntry("stroke-width", "2")
        .containsEntry("stroke-dasharray", "1 2");
  }

  @Test
  void labelOnPaper_anyAnchor_liesOnItsPatch() {
    for (Anchor anchor : Anchor.values()) {
      List<Element> both =
          Svg.labelOnPaper(new Spot(100, 50), "abcdef", Lettering.of(INK).with(anchor));
      double left = Parsed.number(Parsed.of(both.getFirst()).all("/rect").getFirst(), "x");
      double width = Parsed.number(Parsed.of(both.getFirst()).all("/rect").getFirst(), "width");
      double expected =
          switch (anchor) {
            case START -> 100;
            case MIDDLE -> 100 - (width - 4) / 2;
            case END -> 100 - (width - 4);
          };
      assertThat(left + 2).isCloseTo(expected, org.assertj.core.api.Assertions.within(0.02));
    }
  }

  @Test
  void label_text_isEscaped() {
    assertThat(Svg.label(new Spot(0, 0), "<5", Lettering.of(INK)).toText()).contains("&lt;5");
  }
}
