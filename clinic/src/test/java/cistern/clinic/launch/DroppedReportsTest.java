package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import cistern.exchange.intake.Intake;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonDocument;
import cistern.exchange.json.JsonText;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.gel.GelFacts;
import cistern.interpretation.Interpreter;
import cistern.report.json.IndentedJson;
import cistern.report.json.InterpretationJson;
import cistern.report.look.ReportFacts;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * One invented panel as a message, a bundle, a table and a workbook, dropped in a real browser:
 * what the case then says is what the command line says of the same bytes.
 */
@TestInstance(Lifecycle.PER_CLASS)
class DroppedReportsTest {

  private static final Facts FACTS = ReportFacts.of(GelFacts.standard());
  private static final Interpreter INTERPRETER = Interpreter.of(FACTS);

  /** Drops a file, given by its name and Base64, on the heading of a page. */
  private static final String DROP =
      "([name, base64]) => { const data = new DataTransfer();"
          + " const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));"
          + " data.items.add(new File([bytes], name));"
          + " const how = { dataTransfer: data, bubbles: true, cancelable: true };"
          + " document.querySelector('h1').dispatchEvent(new DragEvent('drop', how)); }";

  private final Running running = Running.on(Engines.folder());
  private final Caller clinician = running.signedIn(Role.CLINICIAN);
  private final Chromium browser = new Chromium();
  private final Page page = browser.page(1440, ColorScheme.LIGHT);
  private final List<String> complaints = new ArrayList<>();

  DroppedReportsTest() {
    page.onPageError(complaints::add);
    running.signIn(page, Role.CLINICIAN);
  }

  @BeforeEach
  void nothingToComplainOf() {
    complaints.clear();
  }

  @AfterEach
  void everyVersionIsAsItWasWritten() {
    assertThat(complaints).isEmpty();
    assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
  }

  @AfterAll
  void stop() {
    browser.close();
    running.close();
  }

  private String begun(String name, String person) {
    String path = Caller.place(clinician.post("/cases", Map.of("name", name)));
    if (!person.isEmpty()) {
      clinician.post(path + "/question", Map.of("person.id", person));
    }
    return path;
  }

  private void open(String path) {
    page.navigate("http://127.0.0.1:" + running.clinic().port() + path);
  }

  private void drop(DroppedPanel panel, byte[] content) {
    page.evaluate(DROP, List.of(panel.fileName(), Base64.getEncoder().encodeToString(content)));
    page.getByText("What was sent").first().waitFor();
  }

  private void press(String button) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button)).first().click();
  }

  private String said() {
    return page.locator("main").innerText();
  }

  private CaseVersion last(String path) {
    return running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow();
  }

  private static WorkupReading.Understood understood(byte[] content) {
    List<WorkupReading> readings = new ArrayList<>();
    Intake.of(FACTS, LocalMapping.NONE).read(new ByteArrayInputStream(content), readings::add);
    assertThat(readings).singleElement().isInstanceOf(WorkupReading.Understood.class);
    return (WorkupReading.Understood) readings.getFirst();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** As the command line writes it, under the name of the case, invented like all cases here. */
  private static String ofTheCommandLine(byte[] content, String name) {
    SequencedMap<String, Json> members =
        new LinkedHashMap<>(understood(content).document().members());
    members.put("id", new Json.Text(name));
    members.put("invented", new Json.Truth(true));
    return interpretation(JsonText.of(new Json.Structure(members)));
  }

  private static String interpretation(String workup) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    InterpretationJson json = InterpretationJson.of("test");
    IndentedJson.write(
        out,
        generator ->
            json.write(generator, INTERPRETER.interpret(understood(bytes(workup)).workup())));
    return out.toString(StandardCharsets.UTF_8);
  }

  private static Json section(String json, String name) {
    return JsonDocument.read(
            new ByteArrayInputStream(bytes(json)), InputLimits.of(FACTS), new InputProblems())
        .orElseThrow()
        .members()
        .getOrDefault(name, new Json.Nothing());
  }

  @ParameterizedTest
  @EnumSource(DroppedPanel.class)
  void report_droppedOnACase_saysWhatTheCommandLineSays(DroppedPanel panel) {
    String path = begun("case-" + panel.word(), "");
    open(path + "/results");
    drop(panel, panel.content("204"));

    assertThat(said())
        .contains("identifier droppel-7", "What goes where", "CSF albumin\t204 mg/L\tnone")
        .contains("Bands in the fluid only\t7\tnone", "Not understood, and kept in the file only")
        .contains("Ferritin");
    assertThat(last(path).number()).isEqualTo(1);
    press("Put these results into case-" + panel.word());
    page.waitForURL(url -> url.endsWith(path));
    String kept = interpretation(last(path).workup());
    assertThat(kept).isEqualTo(ofTheCommandLine(panel.content("204"), "case-" + panel.word()));
    String message = ofTheCommandLine(DroppedPanel.HL7.content("204"), "x");
    for (String part : List.of("findings", "criteria", "statements", "conflicts")) {
      assertThat(section(kept, part)).as(part).isEqualTo(section(message, part));
    }
  }

  @ParameterizedTest
  @EnumSource(DroppedPanel.class)
  void report_droppedOnTheDay_isPreviewedAndBeginsACase(DroppedPanel panel) {
    open("/day");
    drop(panel, panel.content("214"));

    assertThat(said()).contains("identifier droppel-7", "CSF albumin\t214 mg/L", "Ferritin");
    press("Begin a case with it");
    page.waitForURL(url -> url.contains("/cases/"));
    String path = page.url().substring(page.url().indexOf("/cases/"));
    String name = understood(bytes(last(path).workup())).workup().id();
    String kept = last(path).workup().replaceFirst("\\{", "{ \"invented\": true, ");
    String without = last(path).workup().contains("\"invented\"") ? last(path).workup() : kept;
    assertThat(interpretation(without)).isEqualTo(ofTheCommandLine(panel.content("214"), name));
  }

  @Test
  void report_ofAPersonOfACase_isHeldAgainstThatCaseAloneAndALaterOneAmends() {
    String theirs = begun("of-another", "somebody-else");
    String path = begun("of-this-person", "droppel-7");
    Running.day(clinician);
    open("/day");
    drop(DroppedPanel.FHIR, DroppedPanel.FHIR.content("204"));

    assertThat(said()).doesNotContain("Hold it against of-another");
    press("Hold it against of-this-person");
    press("Put these results into of-this-person");
    page.waitForURL(url -> url.endsWith(path));
    open(path + "/results");
    drop(DroppedPanel.HL7, DroppedPanel.HL7.content("244"));
    assertThat(said())
        .contains("CSF albumin\t244 mg/L\t204 mg/L", "serum albumin\t44 g/L\tthe same");
    press("Put these results into of-this-person");
    page.waitForURL(url -> url.endsWith(path));
    assertThat(last(path).number()).isEqualTo(4);
    assertThat(clinician.get(path).body()).contains("results that were sent");
    assertThat(clinician.get(path + "/versions/3").body()).contains("204");

    open(theirs + "/results");
    drop(DroppedPanel.XLSX, DroppedPanel.XLSX.content("204"));
    assertThat(said())
        .contains(
            "This is another person's", "identifier is droppel-7, that of this case somebody");
    assertThat(page.getByText("Put these results into").count()).isZero();
    assertThat(last(theirs).workup()).doesNotContain("albumin");
  }
}
