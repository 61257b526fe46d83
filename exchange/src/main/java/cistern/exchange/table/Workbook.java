package cistern.exchange.table;

import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.table.CellGrid.Row;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.SequencedSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.stream.XMLStreamException;

/**
 * A workbook (Office Open XML): its sheets that hold something. Unpacked only up to the size that
 * any input may have, so that a small file cannot become a large one.
 */
final class Workbook {

  private static final int MOST_PARTS = 2_000;

  private Workbook() {}

  /** The sheets that hold something; none, with a problem noted, when it cannot be read. */
  static List<CellGrid> read(byte[] bytes, InputLimits limits, InputProblems problems) {
    try {
      Optional<Map<String, byte[]>> parts = unpacked(bytes, limits, problems);
      return parts.isEmpty() ? List.of() : grids(parts.get(), limits, problems);
    } catch (IOException
        | XMLStreamException
        | IllegalArgumentException
        | MissingResourceException e) {
      problems.add(InputProblem.of(InputTrouble.ZIP, "", "it is damaged"));
      return List.of();
    }
  }

  private static Optional<Map<String, byte[]>> unpacked(
      byte[] bytes, InputLimits limits, InputProblems problems) throws IOException {
    Map<String, byte[]> parts = new HashMap<>();
    long left = limits.bytes();
    int count = 0;
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        byte[] part = zip.readNBytes((int) left + 1);
        left -= part.length;
        if (left < 0 || ++count > MOST_PARTS) {
          problems.add(
              InputProblem.of(
                  InputTrouble.ZIP, "", "unpacked it is larger than any workbook of results"));
          return Optional.empty();
        }
        if (entry.getName().startsWith("xl/") && entry.getName().endsWith(".xml")) {
          parts.put(entry.getName(), part);
        }
      }
    }
    return Optional.of(parts);
  }

  private static List<CellGrid> grids(
      Map<String, byte[]> parts, InputLimits limits, InputProblems problems)
      throws XMLStreamException {
    List<String> sheets =
        parts.keySet().stream()
            .filter(name -> name.matches("xl/worksheets/sheet\\d+\\.xml"))
            .sorted((a, b) -> number(a) - number(b))
            .toList();
    SheetReader reader =
        new SheetReader(
            SheetParts.texts(parts.getOrDefault("xl/sharedStrings.xml", new byte[0])),
            SheetParts.formats(parts.getOrDefault("xl/styles.xml", new byte[0])),
            SheetParts.isFrom1904(parts.getOrDefault("xl/workbook.xml", new byte[0])),
            limits.values());
    SequencedMap<String, List<Row>> filled = new LinkedHashMap<>();
    for (String sheet : sheets) {
      List<Row> rows = reader.rows(parts.getOrDefault(sheet, new byte[0]));
      if (rows.stream().anyMatch(row -> !row.isBlank())) {
        filled.put(sheet, rows);
      }
    }
    if (filled.isEmpty()) {
      problems.add(InputProblem.of(InputTrouble.NOT_A_REPORT, "", "the workbook holds no cells"));
    }
    return filled.entrySet().stream()
        .map(e -> new CellGrid(e.getValue(), others(filled.sequencedKeySet(), e.getKey())))
        .toList();
  }

  private static List<LeftOver> others(SequencedSet<String> sheets, String sheet) {
    return sheets.stream()
        .filter(other -> !other.equals(sheet))
        .map(other -> new LeftOver(other, Why.NOT_A_RESULT, "another sheet", "", ""))
        .toList();
  }

  private static int number(String sheet) {
    return Integer.parseInt(sheet.replaceAll("\\D", "").replaceFirst("^(\\d{1,8}).*", "$1"));
  }
}
