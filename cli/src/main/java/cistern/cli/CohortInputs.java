package cistern.cli;

import cistern.exchange.json.InputProblem;
import cistern.exchange.table.CsvRecords;
import cistern.exchange.table.CsvRecords.CsvRecord;
import cistern.exchange.workup.WorkupReading;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Spliterator;
import java.util.Spliterators;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * The work-ups of a cohort, one input after another: a folder of files, a file with one work-up or
 * FHIR resource a line, a table of any length, or any other file that work-ups are read from.
 */
final class CohortInputs {

  /** A table longer than this is read in parts, so that memory does not grow with it. */
  private static final long LONG_TABLE = 1 << 20;

  private static final int ROWS_OF_PART = 256;
  private static final Pattern ROW = Pattern.compile("^row (\\d+)");

  private CohortInputs() {}

  /** One input that is still to be read; it may hold more than one work-up. */
  interface Input {

    /** Where it stands, for a sentence. */
    String place();

    /**
     * Reads it.
     *
     * @param areGelsRead whether the gels that work-ups name are read as well
     */
    void read(WorkupInputs inputs, boolean areGelsRead, Consumer<WorkupReading> readings);
  }

  private record WholeInput(String place) implements Input {
    @Override
    public void read(WorkupInputs inputs, boolean areGelsRead, Consumer<WorkupReading> readings) {
      if (areGelsRead) {
        inputs.readings(place, readings);
      } else {
        inputs.reading(place, readings);
      }
    }
  }

  /**
   * A part of a file.
   *
   * @param place the file, with the line where it holds one work-up
   * @param text of the part, with the headings of the table before it
   * @param rowsBefore how many rows of the table stand before the part
   */
  private record PartInput(String place, String text, int rowsBefore) implements Input {
    @Override
    public void read(WorkupInputs inputs, boolean areGelsRead, Consumer<WorkupReading> readings) {
      byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
      inputs.readings(new ByteArrayInputStream(bytes), reading -> readings.accept(placed(reading)));
    }

    private WorkupReading placed(WorkupReading reading) {
      return switch (reading) {
        case WorkupReading.Understood understood -> understood;
        case WorkupReading.NotValid(List<InputProblem> problems) ->
            new WorkupReading.NotValid(problems.stream().map(this::placed).toList());
      };
    }

    private InputProblem placed(InputProblem problem) {
      Matcher row = ROW.matcher(problem.place());
      String place =
          row.find()
              ? "row "
                  + (Integer.parseInt(row.group(1)) + rowsBefore)
                  + problem.place().substring(row.end())
              : problem.place();
      return new InputProblem(problem.trouble(), place, problem.text());
    }
  }

  /**
   * The inputs under a path, in the order of their names or lines; closed by the caller.
   *
   * @throws UncheckedIOException when the path cannot be read
   */
  static Stream<Input> of(Path path) {
    try {
      if (Files.isDirectory(path)) {
        return files(path).stream().flatMap(CohortInputs::ofFile);
      }
      return ofFile(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(Files::isRegularFile)
          .filter(file -> !file.getFileName().toString().startsWith("."))
          .filter(file -> !isPicture(file))
          .sorted()
          .toList();
    }
  }

  private static Stream<Input> ofFile(Path file) {
    try {
      String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
      if (name.endsWith(".ndjson") || name.endsWith(".jsonl")) {
        return lines(file);
      }
      boolean isTable = name.endsWith(".csv") || name.endsWith(".tsv");
      if (isTable && Files.size(file) > LONG_TABLE) {
        return parts(file);
      }
      return Stream.of(new WholeInput(file.toString()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean isPicture(Path file) {
    return file.getFileName().toString().toLowerCase(Locale.ROOT).matches(".*\\.(png|jpe?g|tiff?)");
  }

  private static Stream<Input> lines(Path file) throws IOException {
    BufferedReader reader = Files.newBufferedReader(file);
    Iterator<Integer> numbers = Stream.iterate(1, n -> n + 1).iterator();
    return reader
        .lines()
        .map(line -> new PartInput(file + ":" + numbers.next(), line, 0))
        .filter(part -> !part.text().isBlank())
        .map(Input.class::cast)
        .onClose(() -> close(reader));
  }

  private static Stream<Input> parts(Path file) throws IOException {
    BufferedReader reader = Files.newBufferedReader(file);
    reader.mark(1 << 16);
    String heading = Optional.ofNullable(reader.readLine()).orElse("");
    reader.reset();
    char sign =
        Stream.of('\t', ';', ',')
            .max(Comparator.comparingLong(s -> heading.chars().filter(c -> c == s).count()))
            .orElseThrow();
    Iterator<Input> parts = new Parts(file, new CsvRecords(reader, sign));
    return StreamSupport.stream(
            Spliterators.spliteratorUnknownSize(parts, Spliterator.ORDERED), false)
        .onClose(() -> close(reader));
  }

  private static void close(BufferedReader reader) {
    try {
      reader.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A long table, some rows at a time, each time under its headings. */
  private static final class Parts implements Iterator<Input> {

    private final Path file;
    private final CsvRecords records;
    private final String heading;
    private Optional<CsvRecord> next;

    Parts(Path file, CsvRecords records) throws IOException {
      this.file = file;
      this.records = records;
      this.heading = records.next().map(CsvRecord::raw).orElse("");
      this.next = records.next();
    }

    @Override
    public boolean hasNext() {
      return next.isPresent();
    }

    @Override
    public Input next() {
      int first = next.orElseThrow(NoSuchElementException::new).line();
      StringBuilder text = new StringBuilder(heading);
      try {
        for (int i = 0; i < ROWS_OF_PART && next.isPresent(); i++) {
          text.append(next.get().raw());
          next = records.next();
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return new PartInput(file.toString(), text.toString(), first - 2);
    }
  }
}
