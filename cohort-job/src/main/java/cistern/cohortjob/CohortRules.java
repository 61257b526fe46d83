package cistern.cohortjob;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.MappingFile;
import cistern.exchange.policy.PolicyFile;
import cistern.exchange.policy.PolicyReading;
import cistern.fact.Facts;
import cistern.gel.GelFacts;
import cistern.report.look.ReportFacts;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Under which rules a cohort is read and interpreted, as texts that travel to every machine.
 *
 * @param policy the local policy; empty for none
 * @param mapping what a laboratory's headings and codes mean; empty for none
 * @param zone of times without an offset; empty for none
 */
record CohortRules(String policy, String mapping, String zone) implements Serializable {

  private static InputStream stream(String text) {
    return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
  }

  private static Facts standard() {
    return ReportFacts.of(GelFacts.standard());
  }

  /** Why the policy is none; nothing when it is valid. */
  List<InputProblem> policyProblems() {
    return policy.isEmpty()
        ? List.of()
        : switch (PolicyFile.of(standard()).read(stream(policy))) {
          case PolicyReading.Understood understood -> List.of();
          case PolicyReading.NotValid notValid -> notValid.problems();
        };
  }

  /** Why the mapping is none; nothing when it is valid. */
  List<InputProblem> mappingProblems(Facts facts) {
    InputProblems problems = new InputProblems();
    if (!mapping.isEmpty()) {
      MappingFile.of(facts).read(stream(mapping), problems);
    }
    return problems.invalid();
  }

  /**
   * The facts in force.
   *
   * @throws IllegalStateException when the policy is not valid
   */
  Facts facts() {
    Facts standard = standard();
    if (policy.isEmpty()) {
      return standard;
    }
    return switch (PolicyFile.of(standard).read(stream(policy))) {
      case PolicyReading.Understood understood -> standard.with(understood.policy());
      case PolicyReading.NotValid notValid ->
          throw new IllegalStateException("the policy is not valid");
    };
  }

  /** What headings and codes mean. */
  LocalMapping mapping(Facts facts) {
    LocalMapping read =
        mapping.isEmpty()
            ? LocalMapping.NONE
            : MappingFile.of(facts)
                .read(stream(mapping), new InputProblems())
                .orElse(LocalMapping.NONE);
    return zone.isEmpty() ? read : MappingFile.zone(zone).map(read::in).orElse(read);
  }
}
