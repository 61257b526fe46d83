package cistern.report.look;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.report.look.Colour.Deficiency;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TokensTest {

  private static final List<Function<Token, Colour>> PAPERS =
      List.of(
          t -> Colour.parse(Tokens.standard().shade(t).light()),
          t -> Colour.parse(Tokens.standard().shade(t).dark()));

  @Nested
  class Contrast {

    /** WCAG 2.1, success criterion 1.4.6: 7:1; the project's rule for values. */
    @Test
    void ink_onPaperAndTints_isAtLeastSevenToOne() {
      for (Function<Token, Colour> shade : PAPERS) {
        for (Token ground : List.of(Token.PAPER, Token.FLUID_TINT, Token.BLOOD_TINT)) {
          assertThat(shade.apply(Token.INK).contrast(shade.apply(ground)))
              .as("ink on %s", ground)
              .isGreaterThanOrEqualTo(7.0);
        }
      }
    }

    /** WCAG 2.1, success criterion 1.4.3: 4.5:1. */
    @ParameterizedTest
    @EnumSource(names = {"QUIET", "FLUID", "BLOOD"})
    void text_onPaperAndTints_isAtLeastFourAndAHalfToOne(Token text) {
      for (Function<Token, Colour> shade : PAPERS) {
        for (Token ground : List.of(Token.PAPER, Token.FLUID_TINT, Token.BLOOD_TINT)) {
          assertThat(shade.apply(text).contrast(shade.apply(ground)))
              .as("%s on %s", text, ground)
              .isGreaterThanOrEqualTo(4.5);
        }
      }
    }
  }

  @Nested
  class FluidAndBlood {

    /**
     * Just noticeable is about 2.3 in CIE 1976 L*a*b*; ten times that is told apart at a glance.
     */
    private static final double CLEARLY_DIFFERENT = 23;

    /** A difference in L* that survives a print in grey; project rule. */
    private static final double GREY_STEP = 12;

    @ParameterizedTest
    @EnumSource(Deficiency.class)
    void hues_withColourDeficiency_stayApart(Deficiency deficiency) {
      for (Function<Token, Colour> shade : PAPERS) {
        Colour fluid = shade.apply(Token.FLUID).seenWith(deficiency);
        Colour blood = shade.apply(Token.BLOOD).seenWith(deficiency);
        assertThat(fluid.distance(blood)).isGreaterThan(CLEARLY_DIFFERENT);
      }
    }

    @Test
    void hues_inGrey_stayApart() {
      for (Function<Token, Colour> shade : PAPERS) {
        double fluid = shade.apply(Token.FLUID).lightness();
        double blood = shade.apply(Token.BLOOD).lightness();
        assertThat(Math.abs(fluid - blood)).isGreaterThan(GREY_STEP);
      }
    }
  }

  @Nested
  class Published {

    /** WCAG 2.1, definition of contrast ratio: black on white is 21:1. */
    @Test
    void contrast_blackOnWhite_isTwentyOne() {
      assertThat(Colour.parse("#000000").contrast(Colour.parse("#FFFFFF"))).isEqualTo(21.0);
    }

    /** sRGB red is L* 53.24, a* 80.09, b* 67.20 under D65 (CIE 1976; common reference value). */
    @Test
    void lightness_ofRed_isTheReferenceValue() {
      assertThat(Colour.parse("#FF0000").lightness())
          .isCloseTo(53.24, org.assertj.core.api.Assertions.within(0.01));
    }

    /** Machado 2009, doi 10.1109/TVCG.2009.113: neutral greys look alike to everybody. */
    @ParameterizedTest
    @EnumSource(Deficiency.class)
    void seenWith_grey_staysGrey(Deficiency deficiency) {
      Colour grey = Colour.parse("#808080");
      assertThat(grey.seenWith(deficiency).distance(grey)).isLessThan(0.5);
    }
  }

  @Test
  void toStyle_always_namesEveryTokenForLightAndDark() {
    String style = Tokens.standard().toStyle();
    for (Token token : Token.values()) {
      assertThat(style)
          .contains("--" + token.key() + ":" + Tokens.standard().shade(token).light())
          .contains("--" + token.key() + ":" + Tokens.standard().shade(token).dark())
          .contains(".f-" + token.key() + "{fill:var(--" + token.key() + ")}");
    }
  }
}
