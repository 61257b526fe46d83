package cistern.report.cohort;

import cistern.fact.Facts;
import cistern.report.json.IndentedJson;
import cistern.report.paper.Paper;
import cistern.report.paper.PaperPage;
import cistern.report.pdf.PdfDocument;
import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The folder of a cohort's results, written beside its place and moved there when it is whole, so
 * that what is broken off leaves nothing that looks finished.
 */
public final class CohortFolder implements AutoCloseable {

  private final Path folder;
  private final Path part;
  private final BufferedWriter rows;
  private final Thread whenBrokenOff;
  private final Object writing = new Object();
  private boolean isEnded;

  private CohortFolder(Path folder, Path part, BufferedWriter rows) {
    this.folder = folder;
    this.part = part;
    this.rows = rows;
    this.whenBrokenOff = new Thread(this::breakOff);
  }

  /** A folder that is written beside its place. */
  public static CohortFolder beside(Path folder) throws IOException {
    Path place = folder.toAbsolutePath().normalize();
    if (Files.exists(place) && !Files.isDirectory(place)) {
      throw new IOException(folder + " is a file");
    }
    Path parent = Optional.ofNullable(place.getParent()).orElse(place);
    Files.createDirectories(parent);
    Path part = Files.createTempDirectory(parent, "." + place.getFileName() + ".part");
    BufferedWriter rows = Files.newBufferedWriter(part.resolve("interpretations.csv"));
    rows.write(CohortRows.head());
    CohortFolder opened = new CohortFolder(place, part, rows);
    Runtime.getRuntime().addShutdownHook(opened.whenBrokenOff);
    return opened;
  }

  /** Adds a row of {@link CohortRows}, with its line break. */
  public void accept(String row) throws IOException {
    rows.write(row);
  }

  /**
   * Writes what is said of the whole, and moves everything to its place.
   *
   * @param report what is said
   * @param facts in force
   * @param pdf the writer of the page for print
   */
  public void finish(CohortReport report, Facts facts, PdfDocument pdf) throws IOException {
    rows.close();
    text("dictionary.csv", CohortRows.dictionary());
    try (OutputStream out =
        new BufferedOutputStream(Files.newOutputStream(part.resolve("summary.json")))) {
      IndentedJson.write(out, json -> CohortJson.write(json, report));
    }
    if (report.isCompared()) {
      text("changes.csv", CohortChanges.toTable(report.changes()));
    }
    Optional<SiteProposal> proposal = SiteProposal.of(report, facts);
    if (proposal.isPresent()) {
      Files.write(part.resolve(proposal.get().file()), json(proposal.get()));
    }
    Paper paper = CohortPaper.of(report, facts);
    text("report.html", PaperPage.toHtml(paper));
    Files.write(part.resolve("report.pdf"), pdf.write(paper, List.of()));
    synchronized (writing) {
      if (!isEnded) {
        move();
        isEnded = true;
      }
    }
  }

  private static byte[] json(SiteProposal proposal) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    IndentedJson.write(bytes, proposal::write);
    return bytes.toByteArray();
  }

  private void text(String name, String content) throws IOException {
    Files.writeString(part.resolve(name), content);
  }

  /**
   * The folder as a whole where its place is free, else file by file over those of the same name.
   */
  private void move() throws IOException {
    if (!Files.exists(folder)) {
      Files.move(part, folder, StandardCopyOption.ATOMIC_MOVE);
      return;
    }
    for (Path file : files()) {
      Files.move(
          file,
          folder.resolve(file.getFileName()),
          StandardCopyOption.REPLACE_EXISTING,
          StandardCopyOption.ATOMIC_MOVE);
    }
    Files.deleteIfExists(part);
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(part)) {
      return files.sorted().toList();
    }
  }

  @Override
  public void close() throws IOException {
    rows.close();
    breakOff();
    try {
      Runtime.getRuntime().removeShutdownHook(whenBrokenOff);
    } catch (IllegalStateException isShuttingDown) {
      return;
    }
  }

  /** Leaves nothing behind unless everything is in its place. */
  private void breakOff() {
    synchronized (writing) {
      if (isEnded) {
        return;
      }
      isEnded = true;
      try {
        // A row that is being written in this moment makes the folder reappear once.
        for (int i = 0; i < 3 && Files.exists(part); i++) {
          delete();
        }
      } catch (NoSuchFileException gone) {
        return;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private void delete() throws IOException {
    for (Path file : files()) {
      Files.deleteIfExists(file);
    }
    Files.deleteIfExists(part);
  }
}
