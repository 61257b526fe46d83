package cistern.exchange.lab;

import java.util.List;
import java.util.Optional;

/**
 * What goes out: the results of a work-up, and what was made of them.
 *
 * @param workup the results
 * @param findings what was computed; none when only results are converted
 * @param statements what a specialist would write, answer first
 * @param urgent what must be said first
 * @param versions the program and the facts in force
 * @param pdf the report as a document, if it is attached
 */
public record SentReport(
    SentWorkup workup,
    List<SentFinding> findings,
    List<String> statements,
    List<String> urgent,
    Versions versions,
    Optional<byte[]> pdf) {

  /** Copies the lists. */
  public SentReport {
    findings = List.copyOf(findings);
    statements = List.copyOf(statements);
    urgent = List.copyOf(urgent);
  }

  /**
   * What made the report.
   *
   * @param software with its version
   * @param facts the tables in force
   */
  public record Versions(String software, String facts) {}
}
