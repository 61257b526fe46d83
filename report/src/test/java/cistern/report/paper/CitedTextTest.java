package cistern.report.paper;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Bibliography;
import cistern.fact.Reference;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CitedTextTest {

  private static String markup(String words, List<Reference> references) {
    StringBuilder out = new StringBuilder();
    CitedText.of(words, references).toMarkup(out);
    return out.toString();
  }

  @Test
  void of_oneSeenInAnother_linksBoth() {
    Reference tumani = Bibliography.standard().get("tumani-2020");
    Reference hegen = Bibliography.standard().get("hegen-2014");
    String words = tumani.toText() + ", as given in " + hegen.toText() + ", table 4";

    assertThat(markup(words, List.of(tumani, hegen)))
        .isEqualTo(
            "<a href=\"https://doi.org/10.1186/s42466-020-0051-z\" rel=\"noreferrer\">"
                + tumani.toText()
                + "</a>, as given in <a href=\"https://pubmed.ncbi.nlm.nih.gov/24731954/\""
                + " rel=\"noreferrer\">"
                + hegen.toText()
                + "</a>, table 4");
  }

  @Test
  void of_aBookOrNothingCited_isWords() {
    Reference book = new Reference("b", "Nobody", "1900", Map.of("title", "T", "ISBN", "1"));

    assertThat(markup(book.toText() + ", page 1", List.of(book)))
        .isEqualTo("Nobody 1900, T, ISBN 1, page 1");
    assertThat(markup("from memory", List.of())).isEqualTo("from memory");
  }
}
