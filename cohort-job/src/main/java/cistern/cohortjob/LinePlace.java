package cistern.cohortjob;

import java.io.Serializable;
import java.util.Comparator;

/**
 * Where something stands in the input of a cohort. The engine divides a file before anybody has
 * counted its lines: they are counted from the beginning of the division.
 *
 * @param file the number of the file, in the order of names
 * @param division of the file, from 0
 * @param line within the division, from 0
 */
record LinePlace(int file, int division, long line) implements Serializable, Comparable<LinePlace> {

  private static final Comparator<LinePlace> ORDER =
      Comparator.comparingInt(LinePlace::file)
          .thenComparingInt(LinePlace::division)
          .thenComparingLong(LinePlace::line);

  @Override
  public int compareTo(LinePlace other) {
    return ORDER.compare(this, other);
  }
}
