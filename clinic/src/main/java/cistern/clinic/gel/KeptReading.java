package cistern.clinic.gel;

import cistern.clinic.audit.Digest;
import cistern.gel.lanes.LanePlan;

/**
 * What the program read in a picture under one plan of the lanes; it never changes.
 *
 * @param id made by the program
 * @param picture the name of the picture
 * @param lanes the plan in words; empty when nobody named the lanes
 * @param at when, ISO 8601 in UTC
 * @param account who had it read
 * @param madeBy the program and the facts
 * @param text the reading as the reader writes it
 */
public record KeptReading(
    String id,
    String picture,
    String lanes,
    String at,
    String account,
    String madeBy,
    String text) {

  /** The plan of the lanes; nothing said when nobody named them. */
  public LanePlan plan() {
    return lanes.isEmpty() ? LanePlan.NONE : LanePlan.parse(lanes);
  }

  /** What an entry of the audit trail calls it. */
  String subject() {
    return "gel-reading/" + id;
  }

  /** The digest that the audit trail keeps of it. */
  String digest() {
    return Digest.of(id, picture, lanes, at, account, madeBy, text);
  }
}
