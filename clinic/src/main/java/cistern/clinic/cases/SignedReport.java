package cistern.clinic.cases;

import cistern.clinic.audit.Digest;
import java.nio.charset.StandardCharsets;

/**
 * A report as it was signed. It is never changed: an amendment is another report of the case.
 *
 * @param caseId the case
 * @param number from 1; the first is the report, the others are its amendments
 * @param caseVersion the version of the case that was signed
 * @param at when, ISO 8601 in UTC
 * @param account who signed
 * @param reason why it was amended; empty for the first
 * @param content what was signed
 * @param hash SHA-256 over all of this
 */
public record SignedReport(
    String caseId,
    long number,
    long caseVersion,
    String at,
    String account,
    String reason,
    Content content,
    String hash) {

  /**
   * What is frozen by a signature.
   *
   * @param madeBy the program, the facts and the policy with their versions
   * @param workup the inputs
   * @param page the report as it was seen, HTML
   * @param pdf the same for paper; read only
   */
  @SuppressWarnings("ArrayRecordComponent")
  public record Content(String madeBy, String workup, String page, byte[] pdf) {}

  /** What an entry of the audit trail calls it. */
  String subject() {
    return caseId + "/report/" + number;
  }

  /** The hash that it should have. */
  String computedHash() {
    String head =
        Digest.of(
            caseId,
            Long.toString(number),
            Long.toString(caseVersion),
            at,
            account,
            reason,
            content.madeBy(),
            content.workup(),
            content.page());
    return Digest.ofBytes(head.getBytes(StandardCharsets.UTF_8), content.pdf());
  }

  SignedReport withHash(String computed) {
    return new SignedReport(caseId, number, caseVersion, at, account, reason, content, computed);
  }
}
