package cistern.report.markup;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.report.Parsed;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class ElementTest {

  @Nested
  class Escaping {

    @Test
    void toText_hostileText_staysText() {
      String hostile = "<script>alert('x')</script> & \"]]>";
      Parsed page = Parsed.of(Element.of("p", hostile).with("title", hostile));
      assertThat(page.text()).isEqualTo(hostile);
      assertThat(page.all("/p").getFirst().getAttribute("title")).isEqualTo(hostile);
      assertThat(page.all("//script")).isEmpty();
    }

    @Test
    void toText_charactersThatXmlCannotHold_areReplaced() {
      String text = Element.of("p", "a\u0000b\u001Fc\uD800d\uFFFEe\u0085f").toText();
      assertThat(Parsed.of(text).text()).isEqualTo("a\uFFFDb\uFFFDc\uFFFDd\uFFFDe\uFFFDf");
    }

    @Test
    void toText_lettersBeyondTheBasicPlane_survive() {
      assertThat(Parsed.of(Element.of("p", "κ 🧪 é")).text()).isEqualTo("κ 🧪 é");
    }
  }

  @Nested
  class Laws {

    @Test
    void toText_anyText_isReadBackOrReplaced() {
      SplittableRandom random = new SplittableRandom(20_311);
      for (int i = 0; i < 2_000; i++) {
        StringBuilder text = new StringBuilder();
        random.ints(12, 0, 0x3000).forEach(c -> text.append((char) c));
        String read = Parsed.of(Element.of("p", new Text(text.toString()))).text();
        assertThat(read).hasSameSizeAs(text);
        for (int k = 0; k < text.length(); k++) {
          assertThat(read.charAt(k)).isIn(text.charAt(k), '\uFFFD');
        }
      }
    }
  }

  @Test
  void toText_voidElement_hasNoEndTag() {
    assertThat(Element.of("br").toText()).isEqualTo("<br/>");
    assertThat(Element.of("p").toText()).isEqualTo("<p></p>");
  }

  @Test
  void with_sameAttributeTwice_keepsTheLast() {
    assertThat(Element.of("p").with("id", "a").with("id", "b").toText())
        .isEqualTo("<p id=\"b\"></p>");
  }

  @Test
  void fragment_ofNodes_writesThemWithoutAnElement() {
    assertThat(Fragment.of(new Text("a"), Element.of("b", "c")).toText()).isEqualTo("a<b>c</b>");
  }
}
