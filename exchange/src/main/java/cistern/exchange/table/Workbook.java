package cistern.exchange.table;

import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.stream.XMLStreamException;

/**
 * A workbook (Office Open XML): its first sheet that holds something. Unpacked only up to the size
 * that any input may have, so that a small file cannot become a large one.
 */
final class Workbook {

  private static final int MOST_PARTS = 2_000;

  private Workbook() {}

  /** The cells; empty, with a problem noted, when it cannot be read. */
  static Optional<CellGrid> read(byte[] bytes, InputLimits limits, InputProblems problems) {
    try {
      Optional<Map<String, byte[]>> parts = unpacked(bytes, limits, problems);
      return parts.isEmpty() ? Optional.empty() : grid(parts.get(), limits, problems);
    } catch (IOException
        | XMLStreamException
        | IllegalArgumentException
        | MissingResourceException e) {
      problems.add(InputProblem.of(InputTrouble.ZIP, "", "it is damaged"));
      return Optional.empty();
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

  private static Optional<CellGrid> grid(
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
    Optional<CellGrid> first = Optional.empty();
    for (String sheet : sheets) {
      CellGrid grid = new CellGrid(reader.rows(parts.getOrDefault(sheet, new byte[0])), List.of());
      if (first.isEmpty() && grid.rows().stream().anyMatch(row -> !row.isBlank())) {
        first = Optional.of(grid);
      } else if (first.isPresent() && grid.rows().stream().anyMatch(row -> !row.isBlank())) {
        LeftOver note = new LeftOver(sheet, Why.NOT_A_RESULT, "another sheet", "", "");
        first = first.map(g -> new CellGrid(g.rows(), join(g.notes(), note)));
      }
    }
    if (first.isEmpty()) {
      problems.add(InputProblem.of(InputTrouble.NOT_A_REPORT, "", "the workbook holds no cells"));
    }
    return first;
  }

  private static List<LeftOver> join(List<LeftOver> notes, LeftOver note) {
    return java.util.stream.Stream.concat(notes.stream(), java.util.stream.Stream.of(note))
        .toList();
  }

  private static int number(String sheet) {
    return Integer.parseInt(sheet.replaceAll("\\D", "").replaceFirst("^(\\d{1,8}).*", "$1"));
  }
}
