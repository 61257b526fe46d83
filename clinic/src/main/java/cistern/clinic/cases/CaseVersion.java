package cistern.clinic.cases;

import cistern.clinic.audit.Digest;

/**
 * A case as it stood after one change.
 *
 * @param caseId made by the program; no name of a patient
 * @param number from 1, without gaps
 * @param at when, ISO 8601 in UTC
 * @param account who made the change
 * @param step what was changed
 * @param workup the whole work-up file
 */
public record CaseVersion(
    String caseId, long number, String at, String account, String step, String workup) {

  /** What an entry of the audit trail calls this version. */
  String subject() {
    return caseId + "/version/" + number;
  }

  /** The digest that the audit trail keeps of it. */
  String digest() {
    return Digest.of(caseId, Long.toString(number), at, account, step, workup);
  }
}
