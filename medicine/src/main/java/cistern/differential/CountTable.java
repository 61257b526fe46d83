package cistern.differential;

import cistern.fact.Grounds;
import java.util.List;

/**
 * Everything that was published of one rate of one disease, and what is believed after it.
 *
 * @param group the disease, or {@link #ANY} for a joint table that stands for all
 * @param rate the rate, as named in fact keys
 * @param term the rate in words
 * @param rows the published counts
 * @param mean the mean of the belief, 0 to 1
 * @param interval95 the middle 95 % of the belief
 * @param effective how many persons the counts weigh: what the spread between them allows, capped
 */
public record CountTable(
    String group,
    String rate,
    String term,
    List<Row> rows,
    double mean,
    Proportion.Ends interval95,
    double effective) {

  /** The group of a table that stands for all diseases. */
  public static final String ANY = "any";

  /** Copies the rows. */
  public CountTable {
    rows = List.copyOf(rows);
  }

  /**
   * One published count.
   *
   * @param series its name in fact keys
   * @param count how many of how many
   * @param interval95 of the count alone, by the score interval; exact where none or all had it
   * @param grounds its status and sources
   */
  public record Row(String series, Proportion count, Proportion.Ends interval95, Grounds grounds) {}
}
