package cistern.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.fhirpath.IFhirPath;
import cistern.checks.OutsideCheck;
import cistern.exchange.fhir.FhirWriter;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Test;

/**
 * Documents under the rules of the European laboratory report (hl7.fhir.eu.laboratory 2.0.0), whose
 * package no repository of the build holds: cardinalities, invariants and fixed values, written out
 * from the guide's public sources, each with its file and commit. Undated bundles are collections
 * and no documents.
 */
class EuropeanProfileTest {

  private static final FhirContext CONTEXT = FhirContext.forR4Cached();
  private static final IFhirPath PATHS = CONTEXT.newFhirPath();
  private static final List<Rule> RULES = rules();

  /**
   * One rule.
   *
   * @param name in the profile, or in words
   * @param resource which type it is of
   * @param expression of FHIRPath, true where it is kept
   */
  private record Rule(String name, String resource, String expression) {}

  private static List<Rule> rules() {
    try (InputStream in =
            Objects.requireNonNull(
                EuropeanProfileTest.class.getResourceAsStream("eu-laboratory.tsv"));
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .skip(1)
          .map(line -> line.split("\t", -1))
          .map(cells -> new Rule(cells[0], cells[1], cells[2]))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rules that a document breaks, each with the type of the resource. */
  private static List<String> broken(String document, Set<String> kept) {
    Bundle bundle = CONTEXT.newJsonParser().parseResource(Bundle.class, document);
    List<IBaseResource> all = new ArrayList<>();
    all.add(bundle);
    bundle.getEntry().forEach(entry -> all.add(entry.getResource()));
    List<String> broken = new ArrayList<>();
    for (IBaseResource resource : all) {
      for (Rule rule : RULES) {
        if (rule.resource().equals(resource.fhirType())) {
          (isKept(resource, rule) ? kept : broken).add(rule.resource() + ": " + rule.name());
        }
      }
    }
    return broken;
  }

  private static boolean isKept(IBaseResource resource, Rule rule) {
    return PATHS
        .evaluateFirst(resource, rule.expression(), BooleanType.class)
        .map(BooleanType::booleanValue)
        .orElse(false);
  }

  private static Map<String, String> documents() throws IOException {
    Map<String, String> documents = SentExports.all(FhirWriter::write);
    documents.values().removeIf(bundle -> !bundle.contains("\"type\": \"document\""));
    return documents;
  }

  @Test
  void documents_underTheRulesOfTheEuropeanReport_keepEveryOne() throws IOException {
    Set<String> kept = new HashSet<>();

    documents().forEach((name, text) -> assertThat(broken(text, kept)).as(name).isEmpty());

    // Each rule was asked of some resource.
    assertThat(kept).hasSize(RULES.size());
    OutsideCheck.of(
            "FHIR documents as they go out, under the rules of the European laboratory report",
            "FHIR Shorthand of hl7-eu/laboratory and hl7-eu/base, files and commits beside the rules",
            "no rule broken")
        .toTable(RULES.size() + " rules kept by every document");
  }

  @Test
  void rules_ofADocumentThatIsWrong_findIt() throws IOException {
    String right = documents().values().iterator().next();

    Stream.of(
            Map.entry("\"performer\":", "DiagnosticReport and Observation lose their performer"),
            Map.entry("\"category\":", "no category"),
            Map.entry("\"timestamp\":", "no time"))
        .forEach(
            part ->
                assertThat(broken(without(right, part.getKey()), new HashSet<>()))
                    .as(part.getValue())
                    .isNotEmpty());
  }

  /** The bundle with a member under a name that no parser reads. */
  private static String without(String bundle, String member) {
    return bundle.replace(member, "\"unread\":");
  }
}
