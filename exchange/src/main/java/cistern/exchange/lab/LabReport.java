package cistern.exchange.lab;

import java.util.List;
import java.util.Optional;

/**
 * The results that one message, bundle or row brings for one person.
 *
 * @param carrier {@code hl7v2}, {@code fhir} or {@code table}
 * @param id what the sender calls the report
 * @param isInvented whether the sender marks it as training or test
 * @param person whose it is
 * @param results in the order of the report
 * @param leftOver what could not even be read as a result
 */
public record LabReport(
    String carrier,
    Optional<String> id,
    boolean isInvented,
    ReportedPerson person,
    List<ReportedResult> results,
    List<LeftOver> leftOver) {

  /** Copies the lists. */
  public LabReport {
    results = List.copyOf(results);
    leftOver = List.copyOf(leftOver);
  }
}
