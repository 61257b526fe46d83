package cistern.exchange.table;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.table.CsvRecords.CsvRecord;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Records one after another; what is expected are the rules of RFC 4180, section 2. */
class CsvRecordsTest {

  private static List<CsvRecord> all(String text, char sign) throws IOException {
    CsvRecords records = new CsvRecords(new StringReader(text), sign);
    List<CsvRecord> all = new ArrayList<>();
    for (Optional<CsvRecord> next = records.next(); next.isPresent(); next = records.next()) {
      all.add(next.get());
    }
    return all;
  }

  private static List<List<String>> cells(String text) throws IOException {
    return all(text, ',').stream().map(CsvRecord::cells).toList();
  }

  @Test
  void next_anyLineBreak_endsARecord() throws IOException {
    assertThat(cells("a,b\r\nc,d\ne,f"))
        .containsExactly(List.of("a", "b"), List.of("c", "d"), List.of("e", "f"));
  }

  @Test
  void next_quotes_keepSignsBreaksAndQuotes() throws IOException {
    assertThat(cells("\"a,1\",\"b\nc\",\"say \"\"x\"\"\"\nd,5\" needle,\"\""))
        .containsExactly(List.of("a,1", "b\nc", "say \"x\""), List.of("d", "5\" needle", ""));
  }

  @Test
  void next_afterAQuotedBreak_countsLinesOfTheFile() throws IOException {
    List<CsvRecord> all = all("h;i\n\"two\nlines\";x\n;;\nlast;y\n", ';');

    assertThat(all).extracting(CsvRecord::line).containsExactly(1, 2, 4, 5);
    assertThat(all.get(1).raw()).isEqualTo("\"two\nlines\";x\n");
    assertThat(all).extracting(CsvRecord::isBlank).containsExactly(false, false, true, false);
  }

  @Test
  void next_emptyText_hasNoRecord() throws IOException {
    assertThat(all("", ',')).isEmpty();
  }

  @Test
  void next_quotesNeverClosed_keepWhatIsThere() throws IOException {
    assertThat(cells("a,\"b,c\nd")).containsExactly(List.of("a", "b,c\nd"));
  }
}
