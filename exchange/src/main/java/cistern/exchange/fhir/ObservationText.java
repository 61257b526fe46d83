package cistern.exchange.fhir;

import cistern.exchange.lab.Coding;
import cistern.exchange.lab.LoincCode;
import cistern.exchange.lab.SentFinding;
import cistern.exchange.lab.SentResult;
import cistern.fact.Facts;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Observations of a bundle: of one result, of one finding, of one sentence. */
final class ObservationText {

  private static final String CATEGORY =
      "http://terminology.hl7.org/CodeSystem/observation-category";
  private static final String FLAGS =
      "http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation";
  private static final String UCUM = "http://unitsofmeasure.org";
  private static final String ABSENT = "http://hl7.org/fhir/StructureDefinition/data-absent-reason";

  private final String patient;
  private final String performer;
  private final Facts facts;

  ObservationText(String patient, String performer, Facts facts) {
    this.facts = facts;
    this.patient = patient;
    this.performer = performer;
  }

  private ResourceText begin(String status, ResourceText code, Optional<String> at) {
    ResourceText observation =
        ResourceText.of("Observation")
            .with("status", status)
            .list("category", List.of(ResourceText.concept(CATEGORY, "laboratory", "Laboratory")))
            .with("code", code)
            .with("subject", ResourceText.reference(patient))
            .with("effectiveDateTime", at);
    if (at.isEmpty()) {
      observation.with("_effectiveDateTime", absent("unknown"));
    }
    return observation.list("performer", List.of(ResourceText.reference(performer)));
  }

  /** An element without a value, and why it has none. */
  static ResourceText absent(String why) {
    return new ResourceText()
        .list("extension", List.of(new ResourceText().with("url", ABSENT).with("valueCode", why)));
  }

  ResourceText result(SentResult result, Optional<String> at, Optional<String> specimen) {
    ResourceText observation =
        begin(result.beside().status(), code(result.loinc(), result.code(), result.name()), at);
    result
        .beside()
        .measuredAt()
        .ifPresent(
            time ->
                observation.list(
                    "extension",
                    List.of(
                        new ResourceText()
                            .with("url", Coding.MEASURED_AT)
                            .with("valueDateTime", FhirTime.written(time)))));
    if (!result.isNumber()) {
      observation.with("valueString", result.value());
    } else {
      observation.with(
          "valueQuantity",
          quantity(result.sign(), result.value(), result.unit(), result.isUcum(facts)));
    }
    result
        .beside()
        .method()
        .ifPresent(m -> observation.with("method", new ResourceText().with("text", m)));
    specimen.ifPresent(url -> observation.with("specimen", ResourceText.reference(url)));
    result
        .beside()
        .range()
        .ifPresent(
            r -> observation.list("referenceRange", List.of(new ResourceText().with("text", r))));
    return observation;
  }

  ResourceText finding(SentFinding finding, Optional<String> at, List<String> derivedFrom) {
    ResourceText observation =
        begin("final", code(finding.loinc(), finding.code(), finding.code().replace('-', ' ')), at);
    if (finding.value().isEmpty()) {
      observation.with(
          "dataAbsentReason",
          ResourceText.concept(
              "http://terminology.hl7.org/CodeSystem/data-absent-reason", "unknown", "Unknown"));
    } else {
      observation.with(
          "valueQuantity", quantity(finding.sign(), finding.value(), finding.unit(), true));
    }
    observation.list("interpretation", flag(finding.flag()));
    observation.list("note", List.of(new ResourceText().with("text", finding.note())));
    ResourceText range = new ResourceText();
    finding.lower().ifPresent(low -> range.with("low", quantity("", low, finding.unit(), true)));
    finding.upper().ifPresent(high -> range.with("high", quantity("", high, finding.unit(), true)));
    observation.list("referenceRange", List.of(range));
    return observation.list(
        "derivedFrom", derivedFrom.stream().map(ResourceText::reference).toList());
  }

  ResourceText said(String code, String text, String flag, Optional<String> at) {
    return begin("final", code(Optional.empty(), code, code), at)
        .with("valueString", text)
        .list("interpretation", flag(flag));
  }

  private static List<ResourceText> flag(String flag) {
    return switch (flag) {
      case "H" -> List.of(ResourceText.concept(FLAGS, flag, "High"));
      case "L" -> List.of(ResourceText.concept(FLAGS, flag, "Low"));
      case "N" -> List.of(ResourceText.concept(FLAGS, flag, "Normal"));
      case "AA" -> List.of(ResourceText.concept(FLAGS, flag, "Critical abnormal"));
      default -> List.of();
    };
  }

  private static ResourceText quantity(String sign, String value, String unit, boolean isUcum) {
    boolean isCoded = isUcum && !unit.isEmpty();
    return new ResourceText()
        .number("value", value)
        .with("comparator", sign)
        .with("unit", unit)
        .with("system", isCoded ? UCUM : "")
        .with("code", isCoded ? unit : "");
  }

  static ResourceText code(Optional<LoincCode> loinc, String code, String name) {
    List<ResourceText> codings = new ArrayList<>();
    loinc.ifPresent(
        l ->
            codings.add(
                new ResourceText()
                    .with("system", Coding.LOINC)
                    .with("code", l.code())
                    .with("display", l.name())));
    codings.add(
        new ResourceText().with("system", Coding.OWN).with("code", code).with("display", name));
    return new ResourceText().list("coding", codings).with("text", name);
  }
}
