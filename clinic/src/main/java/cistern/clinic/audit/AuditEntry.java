package cistern.clinic.audit;

/**
 * One thing that somebody did or saw. It holds no value of a patient.
 *
 * @param number from 1, without gaps
 * @param at when, ISO 8601 in UTC
 * @param account who; empty for the program itself
 * @param action what
 * @param subject the case or account it was about; may be empty
 * @param digest SHA-256 of what was written; empty when nothing was
 * @param hash SHA-256 over all of this and the hash of the entry before
 */
public record AuditEntry(
    long number,
    String at,
    String account,
    String action,
    String subject,
    String digest,
    String hash) {

  /** The hash that the entry has when it follows an entry with that hash. */
  String hashAfter(String before) {
    return Digest.of(before, Long.toString(number), at, account, action, subject, digest);
  }
}
