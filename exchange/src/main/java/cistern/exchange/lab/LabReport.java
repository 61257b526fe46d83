package cistern.exchange.lab;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
 * @param fields of the work-up beside its results, by their path
 */
public record LabReport(
    String carrier,
    Optional<String> id,
    boolean isInvented,
    ReportedPerson person,
    List<ReportedResult> results,
    List<LeftOver> leftOver,
    Map<String, String> fields) {

  /** Copies the lists. */
  public LabReport {
    results = List.copyOf(results);
    leftOver = List.copyOf(leftOver);
    fields = Collections.unmodifiableMap(new LinkedHashMap<>(fields));
  }

  /** A report of results alone. */
  public LabReport(
      String carrier,
      Optional<String> id,
      boolean isInvented,
      ReportedPerson person,
      List<ReportedResult> results,
      List<LeftOver> leftOver) {
    this(carrier, id, isInvented, person, results, leftOver, Map.of());
  }
}
