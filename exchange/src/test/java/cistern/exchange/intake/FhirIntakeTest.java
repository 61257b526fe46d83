package cistern.exchange.intake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** FHIR R4 reports; invented data, forms by the specification 4.0.1. */
class FhirIntakeTest {

  static final String PATIENT =
      """
      { "fullUrl": "urn:uuid:p", "resource": { "resourceType": "Patient", "id": "p",
        "identifier": [ { "value": "p-7" } ], "gender": "female", "birthDate": "1997-03-02",
        "text": { "status": "generated", "div": "<div><script>alert(1)</script></div>" },
        "name": [ { "family": "Ex|am^ple", "given": [ "Ann", "B." ] } ] } }
      """;

  static String specimen(String id, String type, String at) {
    return """
        { "fullUrl": "urn:uuid:%s", "resource": { "resourceType": "Specimen", "id": "%s",
          "type": { "coding": [ { "code": "x" } ], "text": "%s" },
          "collection": { "collectedDateTime": "%s" } } }
        """
        .formatted(id, id, type, at);
  }

  static String observation(String id, String specimen, String rest) {
    return """
        { "fullUrl": "urn:uuid:%s", "resource": { "resourceType": "Observation", "id": "%s",
          "status": "final", "subject": { "reference": "urn:uuid:p" },
          "specimen": { "reference": "urn:uuid:%s" }, %s } }
        """
        .formatted(id, id, specimen, rest);
  }

  static String loinc(String code) {
    return "\"code\": { \"coding\": [ { \"system\": \"http://loinc.org\", \"code\": \"%s\" } ] }"
        .formatted(code);
  }

  static String quantity(String value, String unit) {
    return ("\"valueQuantity\": { \"value\": %s, \"unit\": \"%s\","
            + " \"system\": \"http://unitsofmeasure.org\", \"code\": \"%s\" }")
        .formatted(value, unit, unit);
  }

  static String bundle(String... entries) {
    return "{ \"resourceType\": \"Bundle\", \"type\": \"collection\", \"entry\": [ "
        + String.join(", ", entries)
        + " ] }";
  }

  static final String CSF = specimen("s1", "CSF", "2031-03-02T10:15:00+01:00");
  private static final String SERUM = specimen("s2", "Serum", "2031-03-02T11:00:00+01:00");

  @Test
  void read_bundle_tellsFluidsBySpecimenAndKeepsDigits() {
    Read read =
        Read.of(
            bundle(
                PATIENT,
                CSF,
                SERUM,
                observation("a", "s1", loinc("1746-7") + "," + quantity("22.00", "mg/dL")),
                observation("b", "s2", loinc("1751-7") + "," + quantity("42", "g/L")),
                observation(
                    "c",
                    "s1",
                    "\"code\": { \"text\": \"kappa\", \"coding\": [ { \"system\":"
                        + " \"https://cistern.example/code\", \"code\": \"kappa-flc\" } ] },"
                        + " \"valueQuantity\": { \"comparator\": \"<\", \"value\": 0.30,"
                        + " \"unit\": \"mg/L\" }")));
    assertThat(read.values())
        .containsExactly("albumin.csf 220.0", "kappa-flc.csf <0.3", "albumin.serum 42000.0");
    assertThat(read.document()).contains("22.00").contains("0.30").contains("Ex|am^ple, Ann B.");
    assertThat(read.document()).contains("2031-03-02T10:15:00+01:00").doesNotContain("script");
    assertThat(read.workup().workup().panel().person().ageYears()).hasValue(34);
  }

  @Test
  void read_containedResourcesAndComponents_areRead() {
    Read read =
        Read.of(
            """
            { "resourceType": "DiagnosticReport", "id": "r-9", "status": "final",
              "code": { "text": "CSF" }, "subject": { "reference": "#p" },
              "contained": [
                { "resourceType": "Patient", "id": "p", "identifier": [ { "value": "p-7" } ] },
                { "resourceType": "Specimen", "id": "s", "type": { "text": "Liquor" } },
                { "resourceType": "Observation", "id": "o", "status": "final",
                  "code": { "text": "cells" }, "subject": { "reference": "#p" },
                  "component": [
                    { "code": { "coding": [ { "system": "http://loinc.org", "code": "26465-5" } ] },
                      "valueQuantity": { "value": 9, "unit": "cells/µL" } },
                    { "code": { "coding": [ { "system": "http://loinc.org", "code": "26454-9" } ] },
                      "dataAbsentReason": { "coding": [ { "code": "error" } ] } } ] } ],
              "specimen": [ { "reference": "#s" } ], "result": [ { "reference": "#o" } ] }
            """);
    assertThat(read.values()).containsExactly("leukocytes.csf 9.0");
    assertThat(read.problems()).containsExactly("no-value");
    assertThat(read.workup().workup().id()).isEqualTo("r-9");
  }

  @Test
  void read_amendedAndCancelled_followTheStatus() {
    String first = observation("a", "s1", loinc("1746-7") + "," + quantity("22", "mg/dL"));
    String amended =
        observation("b", "s1", loinc("1746-7") + "," + quantity("24", "mg/dL"))
            .replace("\"final\"", "\"amended\"");
    String cancelled =
        observation("c", "s1", loinc("2464-6") + "," + quantity("3", "mg/dL"))
            .replace("\"final\"", "\"cancelled\"");
    Read read = Read.of(bundle(PATIENT, CSF, first, amended, cancelled));
    assertThat(read.values()).containsExactly("albumin.csf 240.0");
    assertThat(read.problems()).containsExactlyInAnyOrder("replaced", "cancelled");
  }

  @Test
  void read_reasonForNoValue_isKept() {
    Read read =
        Read.of(
            bundle(
                CSF,
                observation("a", "s1", loinc("1746-7") + "," + quantity("220", "mg/L")),
                observation(
                    "b",
                    "s1",
                    loinc("2464-6") + ", \"dataAbsentReason\": { \"text\": \"too little\" }")));
    assertThat(read.problems()).containsExactly("no-value");
    assertThat(read.document()).contains("too little");
  }

  @Test
  void read_timeThatCannotBeRead_isListedWithItsPlace() {
    Read read =
        Read.of(
            bundle(
                specimen("s1", "CSF", "2031-03"),
                observation("a", "s1", loinc("1746-7") + "," + quantity("220", "mg/L"))));
    assertThat(read.problems()).containsExactly("time-unclear");
    assertThat(read.document())
        .contains("\"Bundle.entry[0].resource.collection.collectedDateTime\"", "2031-03");
  }

  @Test
  void read_amendedResultThatIsNotUnderstood_stillReplacesTheFirst() {
    String first = observation("a", "s1", loinc("1746-7") + "," + quantity("220", "mg/L"));
    String other = observation("b", "s1", loinc("2464-6") + "," + quantity("30", "mg/L"));
    String amended =
        observation("c", "s1", loinc("1746-7") + ", \"valueString\": \"haemolysed\"")
            .replace("\"final\"", "\"amended\"");
    Read read = Read.of(bundle(PATIENT, CSF, first, other, amended));
    assertThat(read.values()).containsExactly("igg.csf 30.0");
    assertThat(read.problems()).containsExactlyInAnyOrder("value-not-understood", "replaced");
  }

  @ParameterizedTest
  @CsvSource({"p-7, 1997-03-02, true", "p-8, 1997-03-02, false", "p-7, 1970-03-02, false"})
  void read_patientThatEachObservationContains_isOneWhenAlike(
      String id, String birth, boolean isOne) {
    String one = contained("a", "1746-7", "220", "p-7", "1997-03-02");
    String two = contained("b", "1751-7", "42000", id, birth);
    Read read = Read.of(bundle(one, two));
    if (isOne) {
      assertThat(read.values()).containsExactly("albumin.csf 220.0", "albumin.serum 42000.0");
      assertThat(read.workup().workup().panel().person().id()).contains("p-7");
    } else {
      assertThat(read.refusals())
          .singleElement()
          .asString()
          .startsWith("two-persons at Bundle.entry[1].resource.contained[0]");
    }
  }

  private static String contained(
      String id, String code, String value, String person, String birth) {
    return observation(id, "", loinc(code) + "," + quantity(value, "mg/L"))
        .replace(
            "\"status\": \"final\"",
            "\"contained\": [ { \"resourceType\": \"Patient\", \"id\": \"p\", \"identifier\":"
                + " [ { \"value\": \"%s\" } ], \"birthDate\": \"%s\" } ], \"status\": \"final\""
                    .formatted(person, birth))
        .replace("\"reference\": \"urn:uuid:p\"", "\"reference\": \"#p\"");
  }

  @Test
  void read_severalDraws_takesTheSerumNearestToEachPuncture() {
    Read read =
        Read.of(
            bundle(
                PATIENT,
                CSF,
                SERUM,
                specimen("s3", "CSF", "2031-06-02T10:15:00+02:00"),
                specimen("s4", "Serum", "2031-06-02T10:20:00+02:00"),
                observation("a", "s1", loinc("1746-7") + "," + quantity("220", "mg/L")),
                observation("b", "s2", loinc("1751-7") + "," + quantity("42", "g/L")),
                observation("c", "s3", loinc("1746-7") + "," + quantity("300", "mg/L")),
                observation("d", "s4", loinc("1751-7") + "," + quantity("40", "g/L"))));
    assertThat(read.count()).isEqualTo(2);
    assertThat(Read.values(read.workup(0))).contains("albumin.csf 220.0", "albumin.serum 42000.0");
    assertThat(Read.values(read.workup(1))).contains("albumin.csf 300.0", "albumin.serum 40000.0");
  }

  @Nested
  class Xml {

    private static final String XML =
        """
        <?xml version="1.0" encoding="UTF-8"?>
        <Bundle xmlns="http://hl7.org/fhir"><type value="collection"/>
         <entry><fullUrl value="urn:uuid:p"/><resource><Patient><id value="p"/>
           <text><status value="generated"/><div xmlns="http://www.w3.org/1999/xhtml"><b>x</b></div></text>
           <identifier><value value="p-7"/></identifier></Patient></resource></entry>
         <entry><fullUrl value="urn:uuid:a"/><resource><Observation><status value="final"/>
           <code><coding><system value="http://loinc.org"/><code value="1746-7"/></coding></code>
           <subject><reference value="urn:uuid:p"/></subject>
           <valueQuantity><value value="3.00"/><unit value="mg/dL"/></valueQuantity>
           </Observation></resource></entry></Bundle>
        """;

    @Test
    void read_xml_isTheSameAsJson() {
      Read read = Read.of(XML);
      assertThat(read.values()).containsExactly("albumin.csf 30.0");
      assertThat(read.document()).contains("3.00");
    }

    @Test
    void read_xmlElementOfAValueAlone_isNoSimpleElement() {
      String bare = XML.replace("<unit value=\"mg/dL\"/>", "");
      Read read =
          Read.of(
              XML.replace(
                  "<resource><Patient>",
                  "<resource><Patient><identifier><value value=\"p-9\"/></identifier>"));
      assertThat(read.document()).contains("\"id\": \"p-9\"");
      assertThat(Read.of(bare).refusals()).singleElement().asString().contains("No unit");
    }

    @Test
    void read_externalEntity_refused() {
      String attack =
          "<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]>"
              + "<Bundle xmlns=\"http://hl7.org/fhir\"><id value=\"&e;\"/></Bundle>";
      assertThat(Read.of(attack).refusals()).singleElement().asString().startsWith("doctype");
    }

    @Test
    void read_entityBomb_refused() {
      StringBuilder bomb =
          new StringBuilder("<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY a0 \"ha\">");
      for (int i = 1; i < 40; i++) {
        bomb.append("<!ENTITY a%d \"&a%d;&a%d;\">".formatted(i, i - 1, i - 1));
      }
      assertThat(Read.of(bomb + "]><Bundle>&a39;</Bundle>").refusals()).hasSize(1);
    }

    @Test
    void read_deepNesting_refused() {
      String deep = "<Bundle>" + "<a>".repeat(100_000) + "</a>".repeat(100_000) + "</Bundle>";
      assertThat(Read.of(deep).refusals())
          .singleElement()
          .asString()
          .startsWith("nested-too-deeply");
    }

    @Test
    void read_brokenXml_refusedWithItsLine() {
      assertThat(Read.of("<Bundle><entry></Bundle>").refusals())
          .singleElement()
          .asString()
          .startsWith("not-xml at line 1");
    }
  }

  @Nested
  class Hostile {

    @Test
    void read_twoPatients_refusedWithBothPlaces() {
      String other =
          PATIENT.replace("urn:uuid:p", "urn:uuid:q").replace("\"id\": \"p\"", "\"id\": \"q\"");
      assertThat(
              Read.of(
                      bundle(
                          PATIENT,
                          other,
                          CSF,
                          observation("a", "s1", loinc("1746-7") + "," + quantity("22", "mg/dL"))))
                  .refusals())
          .singleElement()
          .asString()
          .startsWith("two-persons at Bundle.entry[1].resource")
          .contains("Bundle.entry[0].resource");
    }

    @Test
    void read_duplicateIds_refused() {
      String one = observation("a", "s1", loinc("1746-7") + "," + quantity("22", "mg/dL"));
      String two = observation("a", "s1", loinc("2464-6") + "," + quantity("3", "mg/dL"));
      assertThat(Read.of(bundle(PATIENT, CSF, one, two)).refusals())
          .isNotEmpty()
          .allMatch(r -> r.startsWith("id-of-two at Bundle.entry[3].resource"));
    }

    @Test
    void read_resourceWithoutResults_refused() {
      assertThat(Read.of("{ \"resourceType\": \"Patient\" }").refusals())
          .singleElement()
          .asString()
          .startsWith("not-a-report");
    }

    @Test
    void read_pictureOrPdf_saysWhatToDo() {
      assertThat(Read.of("%PDF-1.7 x").refusals().getFirst()).startsWith("format-unknown");
      assertThat(
              Read.of(new byte[] {'P', 'K', 3, 4}, cistern.exchange.lab.LocalMapping.NONE)
                  .refusals())
          .isNotEmpty();
    }

    @Test
    void read_workup_isStillAWorkup() {
      Read read = Read.of("{ \"workup\": 1, \"id\": \"a\" }");
      assertThat(read.workup().workup().id()).isEqualTo("a");
      assertThat(Read.of("{").refusals()).hasSize(1);
    }
  }
}
