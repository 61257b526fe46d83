package cistern.clinic.figures;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases;
import cistern.clinic.status.Medicine;
import cistern.clinic.store.PassingFolder;
import cistern.report.cohort.CohortFolder;
import cistern.report.cohort.CohortPaper;
import cistern.report.cohort.CohortReport;
import cistern.report.pdf.PdfDocument;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The figures of the clinic: made behind whoever asks, one case after another so that nobody else
 * waits, and kept until they are made anew.
 */
final class Figures {

  private static final Logger LOG = LoggerFactory.getLogger(Figures.class);

  /** How many cases are read together. */
  private static final int BATCH = 100;

  private final Cases cases;
  private final Medicine medicine;
  private final AtomicReference<Standing> standing = new AtomicReference<>(new Standing.NotMade());

  Figures(Cases cases, Medicine medicine) {
    this.cases = cases;
    this.medicine = medicine;
  }

  Standing standing() {
    return standing.get();
  }

  /** Begins to make them, unless they are being made. */
  void begin(Choice choice, String reader) {
    Standing before = standing.get();
    if (before instanceof Standing.Making
        || !standing.compareAndSet(before, new Standing.Making(choice, 0))) {
      return;
    }
    cases.counted(reader);
    Thread _ = Thread.ofVirtual().name("figures").start(() -> standing.set(end(choice)));
  }

  private Standing end(Choice choice) {
    try {
      return make(choice);
    } catch (IOException | RuntimeException e) {
      LOG.warn("Figures were not made: {}", e.getClass().getName());
      return new Standing.Failed(choice);
    }
  }

  private Standing make(Choice choice) throws IOException {
    try (PassingFolder scratch = PassingFolder.make("cistern-figures")) {
      Path place = scratch.path().resolve("figures");
      try (CohortFolder folder = CohortFolder.beside(place)) {
        // Rules that change meanwhile change nothing here.
        Medicine now = medicine.under(medicine.rules(), medicine.clock().instant());
        Counting counting = new Counting(now, choice, folder);
        long read = 0;
        List<CaseVersion> some = cases.after("", BATCH);
        while (!some.isEmpty()) {
          counting.add(some);
          read += some.size();
          standing.set(new Standing.Making(choice, read));
          some = cases.after(some.getLast().caseId(), BATCH);
        }
        CohortReport report = counting.report();
        folder.finish(report, now.facts(), PdfDocument.of(now.software(), now.facts()));
        return new Standing.Made(
            choice,
            now.clock().instant(),
            counting.seen(),
            CohortPaper.of(report, now.facts()),
            counting.diagnoses(),
            zipped(place));
      }
    }
  }

  private static byte[] zipped(Path folder) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes);
        Stream<Path> files = Files.list(folder)) {
      for (Path file : files.sorted().toList()) {
        zip.putNextEntry(new ZipEntry(file.getFileName().toString()));
        Files.copy(file, zip);
        zip.closeEntry();
      }
    }
    return bytes.toByteArray();
  }
}
