package cistern.cli;

import cistern.cohort.ColumnsMixedUp;
import cistern.exchange.intake.CohortNumbers;
import cistern.exchange.intake.CohortNumbers.Part;
import cistern.exchange.table.NumberTable;
import cistern.fact.Facts;
import cistern.report.cohort.CohortReport;
import cistern.report.cohort.NumberJson;
import cistern.report.cohort.Progress;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;

/** The numbers of one long table on all cores of this machine; only sums are kept. */
final class NumberRun {

  /** Lines that one core takes at a time. */
  private static final int LINES = 8_192;

  private final Terminal terminal;
  private final Facts facts;
  private final CohortNumbers numbers;
  private final Progress progress;
  private Part sum = Part.NONE;
  private long done;

  NumberRun(Terminal terminal, Facts facts, boolean hasChances) {
    this.terminal = terminal;
    this.facts = facts;
    this.numbers = CohortNumbers.of(facts, hasChances);
    this.progress = new Progress(terminal.err(), System::nanoTime, "Computed");
  }

  /**
   * Runs.
   *
   * @param input the table
   * @param out the folder of {@code summary.json}
   * @param isConfirmed whether a person says that odd columns are right
   */
  ExitCode run(Path input, Path out, boolean isConfirmed) {
    try (BufferedReader reader = Files.newBufferedReader(input)) {
      NumberTable table = numbers.table(Optional.ofNullable(reader.readLine()).orElse(""));
      if (!CohortNumbers.isEnough(table)) {
        terminal.err().println(input + ": its first line has no albumin.csf or no albumin.serum.");
        return ExitCode.INVALID_INPUT;
      }
      read(reader, table, Math.max(1, Files.size(input)));
    } catch (IOException | UncheckedIOException e) {
      terminal.err().println(input + ": reading it stopped before its end.");
      return ExitCode.INVALID_INPUT;
    }
    sum.problems().forEach(problem -> terminal.say(input.toString(), problem));
    List<ColumnsMixedUp> mixedUp = ColumnsMixedUp.check(sum.profile(), facts);
    mixedUp.forEach(found -> terminal.err().println(input + ": " + found.text()));
    if (sum.summary().rows() == 0 || (!mixedUp.isEmpty() && !isConfirmed)) {
      terminal.err().println("Nothing was written.");
      return ExitCode.INVALID_INPUT;
    }
    progress.finish(sum.summary().rows());
    return written(out);
  }

  /** A part for each core is in work, and one more is read; they are put together in order. */
  private void read(BufferedReader reader, NumberTable table, long size) throws IOException {
    ForkJoinPool cores = ForkJoinPool.commonPool();
    Queue<ForkJoinTask<Part>> working = new ArrayDeque<>();
    long row = 1;
    for (List<String> lines = next(reader); !lines.isEmpty(); lines = next(reader)) {
      List<String> taken = lines;
      long before = row;
      working.add(cores.submit(() -> numbers.read(table, taken, before)));
      row += lines.size();
      if (working.size() > cores.getParallelism() + 1) {
        take(working.remove(), size);
      }
    }
    for (ForkJoinTask<Part> task : working) {
      take(task, size);
    }
  }

  private void take(ForkJoinTask<Part> task, long size) {
    sum = sum.merge(task.join());
    progress.say(sum.summary().rows(), Math.min(1, (double) done / size));
  }

  private List<String> next(BufferedReader reader) throws IOException {
    List<String> lines = new ArrayList<>(LINES);
    String line = reader.readLine();
    while (line != null) {
      lines.add(line);
      done += line.length() + 1L;
      line = lines.size() < LINES ? reader.readLine() : null;
    }
    return lines;
  }

  private ExitCode written(Path out) {
    try {
      CohortReport.Made made =
          new CohortReport.Made(Cistern.software(), facts.version(), facts.policy());
      NumberJson.write(out, made, sum.summary(), sum.refused());
    } catch (IOException e) {
      throw new NotWritten(out.toString(), e);
    }
    return sum.refused() == 0 ? ExitCode.DONE : ExitCode.INVALID_INPUT;
  }
}
