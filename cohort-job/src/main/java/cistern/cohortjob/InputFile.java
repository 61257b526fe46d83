package cistern.cohortjob;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;

/**
 * One file of a cohort's input, on whatever the cluster reads files from.
 *
 * @param path as the engine asks for it
 * @param name as it is said to people
 * @param kind how it is read
 */
record InputFile(String path, String name, Kind kind) implements Serializable {

  /** How a file holds work-ups. */
  enum Kind {
    /** Rows of text under a line of headings. */
    TABLE,
    /** One work-up or FHIR resource a line. */
    LINES,
    /** Columns with types. */
    PARQUET;

    private static Kind of(String name) {
      String ending =
          name.toLowerCase(Locale.ROOT).replaceFirst("\\.gz$", "").replaceFirst(".*\\.", "");
      return switch (ending) {
        case "parquet" -> PARQUET;
        case "ndjson", "jsonl", "json" -> LINES;
        default -> TABLE;
      };
    }
  }

  /**
   * The files under a path, in the order of their names; those whose names begin with a point or an
   * underscore are left out.
   *
   * @throws FileNotFoundException when nothing is there
   */
  static List<InputFile> under(String input, Configuration configuration) throws IOException {
    Path path = new Path(input);
    FileSystem files = path.getFileSystem(configuration);
    List<InputFile> found = new ArrayList<>();
    collect(files, files.getFileStatus(path), found);
    return found.stream().sorted(Comparator.comparing(InputFile::path)).toList();
  }

  private static void collect(FileSystem files, FileStatus status, List<InputFile> found)
      throws IOException {
    String name = status.getPath().getName();
    boolean isWhole = status.isFile() || Kind.of(name) == Kind.PARQUET;
    if (isWhole) {
      String shown = status.getPath().toUri().getPath();
      found.add(new InputFile(status.getPath().toString(), shown, Kind.of(name)));
      return;
    }
    for (FileStatus inside : files.listStatus(status.getPath())) {
      String inner = inside.getPath().getName();
      if (!inner.startsWith(".") && !inner.startsWith("_")) {
        collect(files, inside, found);
      }
    }
  }
}
