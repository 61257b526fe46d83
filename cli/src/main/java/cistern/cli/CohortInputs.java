package cistern.cli;

import cistern.exchange.intake.CohortPart;
import cistern.exchange.table.CsvRecords;
import cistern.exchange.table.CsvRecords.CsvRecord;
import cistern.exchange.workup.WorkupReading;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
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
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * The work-ups of a cohort, one input after another: a folder of files, a file with one work-up or
 * FHIR resource a line, a table of any length, or any other file that work-ups are read from.
 */
final class CohortInputs {

  /** A table longer than this is read in parts, so that memory does not grow with it. */
  private static final long LONG_TABLE = 1 << 20;

  private static final int ROWS_OF_PART = 128;

  private CohortInputs() {}

  /** One input that is still to be read; it may hold more than one work-up. */
  interface Input {

    /** Where it stands, for a sentence. */
    String place();

    /** How much of the whole it is, about: bytes or characters. */
    long size();

    /** Reads it; gels that work-ups name are not read. */
    void read(WorkupInputs inputs, Consumer<WorkupReading> readings);
  }

  private record WholeInput(String place, long size) implements Input {
    @Override
    public void read(WorkupInputs inputs, Consumer<WorkupReading> readings) {
      inputs.reading(place, readings);
    }
  }

  private record PartInput(CohortPart part, long size) implements Input {
    @Override
    public String place() {
      return part.place();
    }

    @Override
    public void read(WorkupInputs inputs, Consumer<WorkupReading> readings) {
      inputs.readings(part, readings);
    }
  }

  /** How much there is to read under a path, about. */
  static long size(Path path) {
    try {
      if (!Files.isDirectory(path)) {
        return Files.size(path);
      }
      long size = 0;
      for (Path file : files(path)) {
        size += Files.size(file);
      }
      return size;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
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
      return Stream.of(new WholeInput(file.toString(), Files.size(file)));
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
        .map(line -> new CohortPart(file + ":" + numbers.next(), line, 0))
        .filter(part -> !part.text().isBlank())
        .<Input>map(part -> new PartInput(part, part.text().length()))
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
      return new PartInput(
          new CohortPart(file.toString(), text.toString(), first - 2),
          text.length() - heading.length());
    }
  }
}
