package cistern.exchange.deidentified;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.fhir.FhirWriter;
import cistern.exchange.hl7v2.Hl7Writer;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.lab.SentFinding;
import cistern.exchange.lab.SentReport;
import cistern.exchange.lab.SentReport.Versions;
import cistern.exchange.lab.SentWorkup;
import cistern.exchange.table.TableWriter;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.finding.Finding;
import cistern.interpretation.Interpreter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * A mark in the place of every text of an input, one after another: wherever the input is still
 * read, none of the four exports nor the list of what is left out holds the mark.
 */
class MarkerTest {

  private static final String MARK = "Zorblax";

  /** What a laboratory would send: each kind of result once. */
  private static final String SENT =
      """
      { "id": "sent-1", "person": { "id": "p-7", "name": "Example, Ann",
          "birthDate": "1997-03-02", "sex": "female" },
        "draws": { "csf": { "at": "2031-03-02T10:15:00Z" } },
        "results": [
          { "analyte": "albumin", "in": "csf", "value": 220, "unit": "mg/L", "assay": "a device",
            "reportedLimit": "110 - 350", "at": "2031-03-02T12:00:00Z" },
          { "analyte": "kappa-flc", "in": "csf", "below": 0.30, "unit": "mg/L" },
          { "analyte": "albumin", "in": "serum", "value": 42, "unit": "g/L" } ],
        "bands": { "result": "positive", "method": "IEF" } }
      """;

  /** More than any segment of a result message has. */
  private static final int FIELDS = 52;

  private static final Interpreter INTERPRETER = Interpreter.of(Site.FACTS);

  private final Site site = new Site(Site.FIRST);

  /** What is kept is mostly the same, wherever the mark was. */
  private final Set<String> seen = new HashSet<>();

  private int read;
  private int kept;

  /** Checks every work-up that is understood of an input that holds the mark. */
  private void check(String input, String where) {
    for (Understood understood : Site.understood(input)) {
      read++;
      boolean isIn = JsonText.of(understood.document()).contains(MARK);
      kept += isIn ? 1 : 0;
      Deidentified safe = site.safe(understood.document());
      assertThat(safe.leftOut()).as(where).noneMatch(place -> place.contains(MARK));
      String document = JsonText.of(safe.document());
      assertThat(document).as(where).doesNotContain(MARK);
      if (seen.add(document)) {
        List<Understood> again = Site.understood(document);
        assertThat(again).as(where).hasSize(1);
        assertThat(exports(again.getFirst())).as(where).noneMatch(text -> text.contains(MARK));
      }
    }
  }

  private static List<String> exports(Understood workup) {
    SentReport results = report(workup, false);
    return List.of(
        FhirWriter.write(results),
        Hl7Writer.write(results),
        TableWriter.of(false).row(INTERPRETER.interpret(workup.workup())));
  }

  private static SentReport report(Understood workup, boolean isWhole) {
    SentWorkup sent = new SentWorkup(workup.document(), Site.FACTS);
    Versions versions = new Versions("test", Site.FACTS.version());
    if (!isWhole) {
      return new SentReport(sent, List.of(), List.of(), List.of(), versions, Optional.empty());
    }
    return new SentReport(
        sent,
        INTERPRETER.interpret(workup.workup()).findings().all().stream()
            .filter(Finding::isAsked)
            .limit(2)
            .map(finding -> SentFinding.of(finding, Site.FACTS))
            .toList(),
        List.of("a statement"),
        List.of("an urgent one"),
        versions,
        Optional.of("%PDF-1.7 invented".getBytes(StandardCharsets.UTF_8)));
  }

  /** The same value with a mark at one text, or at one more name, counted from 0. */
  private static final class Marking {
    private int left;

    private Marking(int index) {
      left = index;
    }

    static String at(int index, Json json) {
      Marking marking = new Marking(index);
      Json marked = marking.over(json);
      return marking.left < 0 ? JsonText.of(marked) : "";
    }

    private Json over(Json json) {
      return switch (json) {
        case Json.Text text -> left-- == 0 ? new Json.Text(MARK + " " + text.value()) : text;
        case Json.Sequence list ->
            new Json.Sequence(list.items().stream().map(this::over).toList());
        case Json.Structure structure -> {
          SequencedMap<String, Json> members = new LinkedHashMap<>();
          structure.members().forEach((name, value) -> members.put(name, over(value)));
          if (left-- == 0) {
            members.put(MARK, new Json.Text(MARK));
          }
          yield new Json.Structure(members);
        }
        case Json.Numeral number -> number;
        case Json.Truth truth -> truth;
        case Json.Nothing nothing -> nothing;
        case Json.NotJson notJson -> notJson;
      };
    }
  }

  private void checkEach(Json json, String name) {
    int index = 0;
    for (String text = Marking.at(0, json); !text.isEmpty(); text = Marking.at(++index, json)) {
      check(text, name + " " + index);
    }
  }

  @Test
  void exports_ofWorkupWithAMarkInEachText_holdNone() {
    checkEach(Site.understood(FullWorkup.TEXT).getFirst().document(), "workup");
    // At least the 30 texts that FullWorkup holds and no list of words knows.
    assertThat(kept).isGreaterThan(80);
  }

  @Test
  void exports_ofBundleWithAMarkInEachText_holdNone() {
    Understood whole = Site.understood(SENT).getFirst();
    String bundle =
        FhirWriter.write(report(whole, true))
            .replaceFirst(
                "\"resourceType\": \"Patient\",",
                """
                "resourceType": "Patient",
                "text": { "status": "generated", "div": "<div>a</div>" },
                "address": [ { "line": ["a"], "city": "b", "postalCode": "c" } ],
                "telecom": [ { "system": "phone", "value": "d" } ],
                "contact": [ { "name": { "text": "e" } } ], "photo": [ { "title": "f" } ],
                """)
            .replaceFirst(
                "\"resourceType\": \"Device\",",
                "\"resourceType\": \"Device\", \"serialNumber\": \"g\", \"owner\": { \"display\": \"h\" },")
            .replaceFirst(
                "\"resourceType\": \"Specimen\",",
                "\"resourceType\": \"Specimen\", \"accessionIdentifier\": { \"value\": \"i\" },"
                    + " \"note\": [ { \"text\": \"j\", \"authorString\": \"k\" } ],")
            .replaceFirst(
                "\"resourceType\": \"Observation\",",
                "\"resourceType\": \"Observation\", \"identifier\": [ { \"value\": \"l\" } ],"
                    + " \"note\": [ { \"text\": \"m\" } ], \"bodySite\": { \"text\": \"n\" },");
    checkEach(Site.tree(bundle), "bundle");
    assertThat(read).isGreaterThan(120);
    assertThat(kept).isGreaterThan(20);
  }

  @Test
  void exports_ofMessageWithAMarkInEachField_holdNone() {
    Understood whole = Site.understood(SENT).getFirst();
    String message =
        Hl7Writer.write(report(whole, true))
            .replaceFirst("OBX\\|1", "NTE|1|L|a note\rOBX|1")
            .replaceFirst("PID", "NK1|1|a name\rPID");
    List<String> segments = Arrays.asList(message.split("\r"));
    for (int i = 0; i < segments.size(); i++) {
      int written = segments.get(i).split("\\|", -1).length;
      for (int field = 1; field <= written; field++) {
        List<String> marked = new ArrayList<>(segments);
        marked.set(i, marked(segments.get(i), field));
        check(String.join("\r", marked) + "\r", segments.get(i).substring(0, 3) + "-" + field);
      }
    }
    assertThat(read).isGreaterThan(120);
    assertThat(kept).isGreaterThan(20);
  }

  /** A segment with a mark in each component of a field, and in all fields behind the last one. */
  private static String marked(String segment, int field) {
    List<String> fields = new ArrayList<>(Arrays.asList(segment.split("\\|", -1)));
    if (field == fields.size()) {
      fields.addAll(Collections.nCopies(FIELDS - field, MARK));
    } else {
      fields.set(field, MARK + fields.get(field).replace("^", "^" + MARK));
    }
    return String.join("|", fields);
  }

  @Test
  void exports_ofTableWithAMarkInEachCell_holdNone() {
    String heading =
        "id,person.id,name,birthDate,ageYears,sex,csf.at,albumin.csf,note,question,finalDiagnosis,"
            + "procedure.done.operator,procedure.done.level,procedure.after.contact,draws.csf.site,"
            + "evidence.supportingSigns,bands.csfOnly,Else\n";
    List<String> row =
        List.of(
            "t-1",
            "p-7",
            "Ann Example",
            "1997-03-02",
            "34",
            "female",
            "2031-03-02T10:15:00Z",
            "220",
            "a",
            "b",
            "ms",
            "Dr Moss",
            "L3/4",
            "555",
            "lumbar",
            "optic",
            "6",
            "c");
    for (int i = 0; i < row.size(); i++) {
      List<String> marked = new ArrayList<>(row);
      marked.set(i, MARK + row.get(i));
      check(heading + String.join(",", marked) + "\n", "column " + i);
    }
    assertThat(kept).isGreaterThan(8);
  }
}
