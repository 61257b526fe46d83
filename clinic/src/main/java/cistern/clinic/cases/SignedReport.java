package cistern.clinic.cases;

import cistern.clinic.audit.Digest;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

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
   * @param papers what else is frozen; a report that was signed before the program did so has none
   */
  @SuppressWarnings("ArrayRecordComponent")
  public record Content(
      String madeBy, String workup, String page, byte[] pdf, Optional<Papers> papers) {}

  /**
   * What is frozen beside the report.
   *
   * @param policy the local policy's file; empty without one
   * @param letter to the referrer, PDF; read only
   * @param patient page for the patient, PDF; read only
   * @param chart the comment for the chart; empty in a report of before the program froze it
   */
  @SuppressWarnings("ArrayRecordComponent")
  public record Papers(String policy, byte[] letter, byte[] patient, String chart) {}

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
    byte[] first = head.getBytes(StandardCharsets.UTF_8);
    return content
        .papers()
        .map(
            p ->
                p.chart().isEmpty()
                    ? Digest.ofBytes(
                        first, content.pdf(), bytes(p.policy()), p.letter(), p.patient())
                    : Digest.ofBytes(
                        first,
                        content.pdf(),
                        bytes(p.policy()),
                        p.letter(),
                        p.patient(),
                        bytes(p.chart())))
        .orElseGet(() -> Digest.ofBytes(first, content.pdf()));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  SignedReport withHash(String computed) {
    return new SignedReport(caseId, number, caseVersion, at, account, reason, content, computed);
  }
}
