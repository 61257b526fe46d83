package cistern.report.figure;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.finding.Verdict;
import cistern.report.look.Token;
import cistern.report.look.Tokens;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class VerdictMarkTest {

  private static String drawn(Verdict verdict) {
    List<Element> shapes = VerdictMark.PLAIN.of(verdict, new Spot(10, 10));
    return new Fragment(List.copyOf(shapes)).toText();
  }

  @Test
  void of_everyVerdict_hasAShapeOfItsOwnWithoutAnyHue() {
    Set<String> shapes =
        Arrays.stream(Verdict.values()).map(VerdictMarkTest::drawn).collect(Collectors.toSet());
    assertThat(shapes).hasSize(Verdict.values().length);
  }

  @ParameterizedTest
  @EnumSource(Verdict.class)
  void of_anyVerdict_isInkAndPaper(Verdict verdict) {
    for (Token hue : List.of(Token.FLUID, Token.BLOOD)) {
      assertThat(drawn(verdict)).doesNotContain(Tokens.standard().shade(hue).light());
    }
  }

  @Test
  void of_theFourOfTheHouse_areDiscRingHalfDiscAndDashedRing() {
    String ink = Tokens.standard().shade(Token.INK).light();
    assertThat(drawn(Verdict.ABOVE)).contains("<circle").contains("fill=\"" + ink + "\"");
    assertThat(drawn(Verdict.WITHIN)).contains("<circle").doesNotContain("fill=\"" + ink + "\"");
    assertThat(drawn(Verdict.BORDERLINE)).contains("<circle").contains("<path");
    assertThat(drawn(Verdict.UNDETERMINED)).contains("stroke-dasharray");
    assertThat(drawn(Verdict.BELOW)).contains("<polygon");
  }
}
