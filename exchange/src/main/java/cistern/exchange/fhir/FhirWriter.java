package cistern.exchange.fhir;

import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.lab.Coding;
import cistern.exchange.lab.Loinc;
import cistern.exchange.lab.SentFinding;
import cistern.exchange.lab.SentReport;
import cistern.exchange.lab.SentResult;
import cistern.exchange.lab.SentWorkup;
import cistern.measurement.Compartment;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Writes a Bundle of FHIR R4 in the form of the European laboratory report: a document whose
 * Composition and DiagnosticReport name the same Observations. Identifiers follow from the work-up,
 * so that the same work-up gives the same bundle. Without any time it is a collection, because a
 * document must be dated.
 */
public final class FhirWriter {

  private static final String COMPOSITION_OF_REPORT =
      "http://hl7.org/fhir/5.0/StructureDefinition/extension-DiagnosticReport.composition";

  private final SentReport report;
  private final SentWorkup workup;
  private final Map<String, ResourceText> entries = new LinkedHashMap<>();
  private final Map<String, String> urlOfSample = new LinkedHashMap<>();
  private final List<String> observations = new ArrayList<>();
  private final List<String> specimens = new ArrayList<>();
  private final Optional<String> dated;

  private FhirWriter(SentReport report) {
    this.report = report;
    this.workup = report.workup();
    this.dated = workup.latest().map(FhirTime::written);
  }

  /** The bundle of a report as indented JSON. */
  public static String write(SentReport report) {
    return JsonText.of(new FhirWriter(report).bundle());
  }

  private String url(String part) {
    byte[] name = ("cistern " + workup.id() + " " + part).getBytes(StandardCharsets.UTF_8);
    return "urn:uuid:" + UUID.nameUUIDFromBytes(name);
  }

  private Json.Structure bundle() {
    ObservationText text = new ObservationText(url("patient"), url("performer"), workup.facts());
    Map<String, ResourceText> results = new LinkedHashMap<>();
    for (Compartment fluid : Compartment.values()) {
      results(fluid, text, results);
    }
    interpretation(text, results);
    if (dated.isPresent()) {
      entries.put(url("composition"), composition());
    }
    entries.put(url("report"), diagnosticReport());
    entries.put(url("patient"), patient());
    entries.put(
        url("performer"),
        ResourceText.of("Organization")
            .with("name", workup.text("laboratory").orElse("Laboratory not named")));
    entries.putAll(results);
    dated.filter(time -> !workup.isDeidentified()).ifPresent(this::provenance);
    ResourceText bundle =
        ResourceText.of("Bundle")
            .with("meta", meta())
            .with(
                "identifier",
                new ResourceText().with("system", "urn:ietf:rfc:3986").with("value", url("bundle")))
            .with("type", dated.isPresent() ? "document" : "collection")
            .with("timestamp", dated);
    return bundle
        .list(
            "entry",
            entries.entrySet().stream()
                .map(
                    e ->
                        new ResourceText()
                            .with("fullUrl", e.getKey())
                            .with("resource", e.getValue()))
                .toList())
        .json();
  }

  /**
   * Labels for invented data and for data without their person. No profile is claimed that a reader
   * would look up.
   */
  private ResourceText meta() {
    List<ResourceText> labels = new ArrayList<>();
    if (workup.isInvented()) {
      labels.add(label("v3-ActReason", "HTEST", "test health data"));
    }
    if (workup.isDeidentified()) {
      labels.add(label("v3-ObservationValue", "PSEUDED", "pseudonymized"));
    }
    return new ResourceText().list("security", labels);
  }

  private static ResourceText label(String system, String code, String display) {
    return new ResourceText()
        .with("system", "http://terminology.hl7.org/CodeSystem/" + system)
        .with("code", code)
        .with("display", display);
  }

  private void results(Compartment fluid, ObservationText text, Map<String, ResourceText> results) {
    List<SentResult> all = workup.results(fluid);
    if (all.isEmpty()) {
      return;
    }
    String draw = fluid == Compartment.CSF ? "csf" : "serum";
    Optional<String> at = workup.time("draws", draw, "at").map(FhirTime::written);
    String specimen = url("specimen " + fluid.code());
    specimens.add(specimen);
    results.put(specimen, specimen(fluid, draw, at));
    for (SentResult result : all) {
      String url = url(result.code());
      results.put(url, text.result(result, at, Optional.of(specimen)));
      observations.add(url);
      result.sample().ifPresent(sample -> urlOfSample.put(sample, url));
    }
  }

  private ResourceText specimen(Compartment fluid, String draw, Optional<String> at) {
    String table = "http://terminology.hl7.org/CodeSystem/v2-0487";
    ResourceText type =
        switch (fluid) {
          case CSF -> ResourceText.concept(table, "CSF", "Cerebral spinal fluid");
          case SERUM -> ResourceText.concept(table, "SER", "Serum");
          case BLOOD -> ResourceText.concept(table, "BLD", "Whole blood");
        };
    return ResourceText.of("Specimen")
        .with("type", type.with("text", fluid.term()))
        .with("subject", ResourceText.reference(url("patient")))
        .with("receivedTime", workup.time("draws", draw, "receivedAt").map(FhirTime::written))
        .with("collection", new ResourceText().with("collectedDateTime", at));
  }

  private void interpretation(ObservationText text, Map<String, ResourceText> results) {
    for (int i = 0; i < report.urgent().size(); i++) {
      String url = url("urgent " + i);
      results.put(url, text.said("urgent", report.urgent().get(i), "AA", dated));
      observations.add(i, url);
    }
    for (SentFinding finding : report.findings()) {
      String url = url(finding.code());
      List<String> from =
          finding.inputs().stream().map(urlOfSample::get).filter(Objects::nonNull).toList();
      results.put(url, text.finding(finding, dated, from));
      observations.add(url);
    }
  }

  private ResourceText identifier() {
    return new ResourceText().with("system", Coding.OWN + "/workup").with("value", workup.id());
  }

  private ResourceText type() {
    return ObservationText.code(
        Loinc.toWrite("report", report.workup().facts()), "report", "Laboratory report");
  }

  /** The same for the report and its document, as the European profile asks. */
  private static ResourceText category() {
    return ResourceText.concept(
        "http://terminology.hl7.org/CodeSystem/v2-0074", "LAB", "Laboratory");
  }

  private ResourceText composition() {
    ResourceText section =
        new ResourceText()
            .with("title", "Spinal fluid and serum")
            .with(
                "code",
                ObservationText.code(
                    Loinc.toWrite("section", report.workup().facts()),
                    "section",
                    "Laboratory studies"))
            .list("entry", observations.stream().map(ResourceText::reference).toList());
    return ResourceText.of("Composition")
        .with("identifier", identifier())
        .with("status", "final")
        .with("type", type())
        .list("category", List.of(category()))
        .with("subject", ResourceText.reference(url("patient")))
        .with("date", dated)
        .list("author", List.of(ResourceText.reference(url("performer"))))
        .with("title", "Laboratory Report")
        .list("section", List.of(section));
  }

  private ResourceText diagnosticReport() {
    ResourceText resource = ResourceText.of("DiagnosticReport").with("meta", meta());
    if (dated.isPresent()) {
      resource.list(
          "extension",
          List.of(
              new ResourceText()
                  .with("url", COMPOSITION_OF_REPORT)
                  .with("valueReference", ResourceText.reference(url("composition")))));
    }
    resource
        .list("identifier", List.of(identifier()))
        .with("status", "final")
        .list("category", List.of(category()))
        .with("code", type())
        .with("subject", ResourceText.reference(url("patient")))
        .with(
            "effectiveDateTime",
            workup.time("draws", "csf", "at").map(FhirTime::written).or(() -> dated))
        .with("issued", dated)
        .list("performer", List.of(ResourceText.reference(url("performer"))))
        .list("specimen", specimens.stream().map(ResourceText::reference).toList())
        .list("result", observations.stream().map(ResourceText::reference).toList())
        .with("conclusion", conclusion());
    return resource.list("presentedForm", report.pdf().stream().map(FhirWriter::attached).toList());
  }

  private static ResourceText attached(byte[] pdf) {
    return new ResourceText()
        .with("contentType", "application/pdf")
        .with("data", Base64.getEncoder().encodeToString(pdf))
        .with("title", "report");
  }

  /** What must be said first, then the statements. */
  private String conclusion() {
    return String.join(
        "\n", Stream.concat(report.urgent().stream(), report.statements().stream()).toList());
  }

  private ResourceText patient() {
    ResourceText patient = ResourceText.of("Patient");
    workup
        .text("person", "id")
        .ifPresent(
            id ->
                patient.list(
                    "identifier",
                    List.of(
                        new ResourceText()
                            .with("system", Coding.OWN + "/person")
                            .with("value", id))));
    patient.list("name", List.of(name()));
    patient.with("gender", gender());
    patient.with("birthDate", workup.birthDate());
    return workup.birthDate().isPresent() ? patient : patient.with("_birthDate", absent());
  }

  /** The name, or why there is none: the European profile asks for one of them. */
  private ResourceText name() {
    Optional<String> name = workup.text("person", "name").filter(text -> !text.isBlank());
    if (name.isEmpty()) {
      return absent();
    }
    String[] parts = name.get().split(", ", 2);
    ResourceText human = new ResourceText().with("family", parts[0]);
    return parts.length > 1 ? human.texts("given", List.of(parts[1])) : human;
  }

  /** Why something is not said: it is hidden, or nobody knows it here. */
  private ResourceText absent() {
    return ObservationText.absent(workup.isDeidentified() ? "masked" : "unknown");
  }

  private String gender() {
    String sex = workup.text("person", "sex").orElse("unknown");
    return List.of("female", "male", "unknown").contains(sex) ? sex : "other";
  }

  private void provenance(String recorded) {
    String device = url("software");
    ResourceText version = new ResourceText().with("value", report.versions().software());
    entries.put(
        device,
        ResourceText.of("Device")
            .list(
                "deviceName",
                List.of(new ResourceText().with("name", "Cistern").with("type", "model-name")))
            .list("version", List.of(version)));
    ResourceText hash =
        new ResourceText()
            .with(
                "identifier",
                new ResourceText().with("system", "urn:cistern:sha-256").with("value", hash()))
            .with("display", "the work-up; facts: " + report.versions().facts());
    entries.put(
        url("provenance"),
        ResourceText.of("Provenance")
            .list("target", List.of(ResourceText.reference(url("report"))))
            .with("recorded", recorded)
            .list("agent", List.of(new ResourceText().with("who", ResourceText.reference(device))))
            .list("entity", List.of(new ResourceText().with("role", "source").with("what", hash))));
  }

  private String hash() {
    try {
      byte[] bytes = JsonText.of(workup.document()).getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
