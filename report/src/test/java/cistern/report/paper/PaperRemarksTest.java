package cistern.report.paper;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.report.markup.Fragment;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PaperRemarksTest {

  @Test
  void mark_sameRemarkTwice_hasOneLetter() {
    PaperRemarks remarks = new PaperRemarks();
    assertThat(remarks.mark("doubted").toText()).isEqualTo("<span class=\"remark\">a</span>");
    assertThat(remarks.mark("low; doubted").toText())
        .isEqualTo("<span class=\"remark\">b, a</span>");
    assertThat(remarks.toParagraph().toText()).contains(" doubted. ", " low. ");
  }

  @Test
  void mark_nothing_isNothing() {
    PaperRemarks remarks = new PaperRemarks();
    assertThat(remarks.mark("").toText()).isEmpty();
    assertThat(remarks.toParagraph()).isEqualTo(Fragment.of());
  }

  @Test
  void letter_anyIndex_isItsOwn() {
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < 1_000; i++) {
      assertThat(seen.add(PaperRemarks.letter(i))).isTrue();
    }
    assertThat(PaperRemarks.letter(25)).isEqualTo("z");
    assertThat(PaperRemarks.letter(26)).isEqualTo("aa");
  }
}
