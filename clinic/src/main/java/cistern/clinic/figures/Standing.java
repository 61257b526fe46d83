package cistern.clinic.figures;

import cistern.report.paper.Paper;
import java.time.Instant;
import java.util.SortedMap;

/** How the figures of the clinic stand. */
sealed interface Standing {

  /** Nobody has asked for them since the program was started. */
  record NotMade() implements Standing {}

  /**
   * Cases are being read.
   *
   * @param choice which
   * @param read how many were read so far
   */
  record Making(Choice choice, long read) implements Standing {}

  /**
   * They are made.
   *
   * @param choice of what
   * @param at when
   * @param seen how many cases were looked at
   * @param paper what is said of them
   * @param diagnoses how many of the punctures have which final diagnosis
   * @param archive the paper and the tables, as one ZIP file
   */
  @SuppressWarnings("ArrayRecordComponent") // Neither compared nor changed: only sent.
  record Made(
      Choice choice,
      Instant at,
      Seen seen,
      Paper paper,
      SortedMap<String, Long> diagnoses,
      byte[] archive)
      implements Standing {}

  /**
   * How many cases were looked at.
   *
   * @param counted those that are in the figures
   * @param left those without a fluid, or drawn at another time
   * @param unreadable those that the rules in force reject
   */
  record Seen(long counted, long left, long unreadable) {}

  /** They could not be made; the log of the program names the kind of fault. */
  record Failed(Choice choice) implements Standing {}
}
