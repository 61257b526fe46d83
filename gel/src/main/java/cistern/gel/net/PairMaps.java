package cistern.gel.net;

import java.util.ArrayList;
import java.util.List;

/**
 * What StripNet says of a pair of straightened lanes; every number but the last is a chance.
 *
 * <p>rows: a band of the CSF, of the serum and of the CSF alone has its middle there
 *
 * <p>unlike: how unlike the gels of the training the pair is; 1 at the most unlike two hundredth
 */
public final class PairMaps {
  /** Rows of a straightened lane. */
  public static final int ROWS = 1280;

  /** Columns of a straightened lane. */
  public static final int COLUMNS = 24;

  /** Rows by which two answers may differ and mean the same band. */
  private static final int SAME = 4;

  private final float[] rows;
  private final float[] counts;
  private final float[] faults;
  private final double unlike;

  /** What the net said: three chances of every row, one kind after the other, and the others. */
  public PairMaps(float[] rows, float[] counts, float[] faults, double unlike) {
    this.rows = rows;
    this.counts = counts;
    this.faults = faults;
    this.unlike = unlike;
  }

  /** What is said of every row. */
  public enum Row {
    CSF(0),
    SERUM(1),
    CSF_ALONE(2);

    private final int place;

    Row(int place) {
      this.place = place;
    }
  }

  /** What can be wrong with a pair. */
  public enum Fault {
    OTHER_SERUM(0),
    CSF_UNREADABLE(1),
    SERUM_UNREADABLE(2);

    private final int place;

    Fault(int place) {
      this.place = place;
    }
  }

  /** The chance of a band's middle at a row. */
  public double at(Row what, int row) {
    return rows[what.place * ROWS + row];
  }

  /** Rows at which a chance is greatest within two rows, and at least so great. */
  public List<Integer> peaks(Row what, double least) {
    List<Integer> peaks = new ArrayList<>();
    for (int y = 0; y < ROWS; y++) {
      double p = at(what, y);
      boolean isPeak = p >= least;
      for (int d = 1; d <= 2 && isPeak; d++) {
        isPeak = (y < d || at(what, y - d) < p) && (y + d >= ROWS || at(what, y + d) <= p);
      }
      if (isPeak) {
        peaks.add(y);
      }
    }
    return peaks;
  }

  /** The greatest chance near a row: as near as two answers that mean the same band. */
  public double most(Row what, int row) {
    double most = 0;
    for (int y = Math.max(0, row - SAME); y <= Math.min(ROWS - 1, row + SAME); y++) {
      most = Math.max(most, at(what, y));
    }
    return most;
  }

  /** The chance of 0, 1, 2, or 3 and more CSF-only bands. */
  public double count(int count) {
    return counts[count];
  }

  /** The chance that something is wrong. */
  public double fault(Fault fault) {
    return faults[fault.place];
  }

  /** How unlike the gels of the training the pair is, from 0. */
  public double unlike() {
    return unlike;
  }
}
