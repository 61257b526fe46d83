package cistern.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.SingleValidationMessage;
import cistern.checks.OutsideCheck;
import cistern.exchange.fhir.FhirWriter;
import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Bundles under the rules, the value sets and the invariants of R4, by the reference validator. */
@Tag("long")
class InstanceValidatorTest {

  /**
   * The European laboratory report (hl7.fhir.eu.laboratory 2.0.0) takes this extension over from
   * R5, whose definitions the validator of R4 does not hold.
   */
  private static final String FROM_R5 =
      "http://hl7.org/fhir/5.0/StructureDefinition/extension-DiagnosticReport.composition";

  private static final Set<ResultSeverityEnum> HARMFUL =
      EnumSet.of(ResultSeverityEnum.ERROR, ResultSeverityEnum.FATAL);

  private static FhirValidator validator() {
    FhirContext context = FhirContext.forR4Cached();
    ValidationSupportChain support =
        new ValidationSupportChain(
            new DefaultProfileValidationSupport(context),
            new CommonCodeSystemsTerminologyService(context),
            new InMemoryTerminologyServerValidationSupport(context));
    return context.newValidator().registerValidatorModule(new FhirInstanceValidator(support));
  }

  private static List<String> errors(FhirValidator validator, String bundle) {
    return validator.validateWithResult(bundle).getMessages().stream()
        .filter(message -> HARMFUL.contains(message.getSeverity()))
        .filter(message -> !isFromR5(message))
        .map(message -> message.getLocationString() + ": " + message.getMessage())
        .toList();
  }

  private static boolean isFromR5(SingleValidationMessage message) {
    return message.getMessage().contains(FROM_R5) && message.getMessage().contains("Version '5.0'");
  }

  @Test
  void bundles_underTheRulesOfR4_areValid() throws IOException {
    FhirValidator validator = validator();
    Map<String, String> bundles = SentExports.all(FhirWriter::write);
    bundles.forEach((name, bundle) -> assertThat(errors(validator, bundle)).as(name).isEmpty());
    OutsideCheck.of(
            "FHIR bundles as they go out, by rules, value sets and invariants",
            "HAPI FHIR 8.8.1, instance validator of R4 without a terminology server",
            "no error")
        .toTable(bundles.size() + " bundles without an error");
  }

  @Test
  void validator_ofAnEmptyReferenceRange_findsIt() {
    // Invariant obs-3 of R4: a reference range has a low, a high or a text.
    String wrong =
        """
        { "resourceType": "Observation", "status": "final", "code": { "text": "a" },
          "referenceRange": [ { "type": { "text": "b" } } ] }
        """;
    assertThat(errors(validator(), wrong)).anyMatch(error -> error.contains("obs-3"));
  }
}
