package cistern.checks;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * One comparison with something that this project did not make: a printed example, a standard, an
 * independent library, a second implementation. A test makes the comparison, asserts on it, and
 * then writes what came out as a row of {@code docs/validation.md}.
 *
 * <p>Results must not change from run to run, so a deviation is written as the power of ten that it
 * stays under, not as its digits.
 *
 * @param what what was compared, in words, e.g. "IgG limit of Reiber, 12 quotients"
 * @param source where the expected numbers come from: a DOI, a PMID, a library with its version
 * @param tolerance the largest deviation that passes, with its kind, e.g. "relative 1e-9"
 */
public record OutsideCheck(String what, String source, String tolerance) {

  /**
   * The system property that holds the folder of the rows; {@code target/validation} without it.
   */
  static final String FOLDER = "cistern.validation";

  /** Checks that every part is one line of text. */
  public OutsideCheck {
    TableRow.checkCell("what", what);
    TableRow.checkCell("source", source);
    TableRow.checkCell("tolerance", tolerance);
  }

  /**
   * A comparison, before it is made.
   *
   * @param what what is compared
   * @param source where the expected numbers come from
   * @param tolerance the largest deviation that passes
   * @return the check
   */
  public static OutsideCheck of(String what, String source, String tolerance) {
    return new OutsideCheck(what, source, tolerance);
  }

  /**
   * Writes the row of a comparison that passed.
   *
   * @param result what came out, the same on every run and every machine, e.g. "36 of 36 agree"
   */
  public void toTable(String result) {
    toFolder(Path.of(System.getProperty(FOLDER, "target/validation")), result);
  }

  /**
   * Writes the row of a comparison that passed, with the size of its worst deviation.
   *
   * @param worstDeviation the largest deviation seen, finite and not negative
   */
  public void toTable(double worstDeviation) {
    toTable(toPowerOfTen(worstDeviation));
  }

  void toFolder(Path folder, String result) {
    TableRow row = new TableRow(what, source, tolerance, result);
    try {
      Files.createDirectories(folder);
      Files.writeString(folder.resolve(row.toFileName()), row.toLine());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The smallest power of ten that the deviation does not exceed; "exact" for none. */
  static String toPowerOfTen(double deviation) {
    if (!(deviation >= 0) || Double.isInfinite(deviation)) {
      throw new IllegalArgumentException("not a deviation: " + deviation);
    }
    if (deviation == 0) {
      return "exact";
    }
    int exponent = (int) Math.ceil(Math.log10(deviation));
    return String.format(Locale.ROOT, "at most 1e%d", exponent);
  }
}
