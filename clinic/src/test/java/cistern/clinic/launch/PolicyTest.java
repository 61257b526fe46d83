package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.store.Engines;
import cistern.clinic.store.Location;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** A clinic under a local policy, and what was signed under another. */
class PolicyTest {

  /** Invented: a clinic that calls bands positive from four on; three are then borderline. */
  private static final String POLICY =
      """
      { "policy": 1, "name": "Invented clinic", "facts": {
        "bands.cut-off": { "value": 4, "unit": "1", "source": "Invented decision 3" } } }
      """;

  private static final List<String> PAPERS = List.of("", "/pdf", "/letter", "/patient", "/file");

  @TempDir private Path folder;

  private final ByteArrayOutputStream said = new ByteArrayOutputStream();

  private Console console() {
    PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
    return new Console(out, out);
  }

  private RulesInForce rules(String policy) throws IOException {
    Path file = Files.writeString(folder.resolve("policy.json"), policy);
    return CommandLine.populateCommand(new WhichPolicy(), "--policy", file.toString())
        .read(console())
        .orElseThrow();
  }

  @Test
  void policy_ofAClinic_holdsForEveryCaseAndStaysInWhatWasSigned() throws IOException {
    Location location = Engines.folder();
    String path;
    List<String> before;
    try (Running running = Running.on(location, rules(POLICY))) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      path = withThreeBands(clinician);
      assertThat(clinician.get(path).body())
          .contains("borderline")
          .contains("Local policy Invented clinic (file ");
      assertThat(clinician.get("/facts").body())
          .contains("by local policy; standard 2")
          .contains("Invented decision 3");
      clinician.post(path + "/report", Map.of("version", "2"));
      before = papers(clinician, path);
      assertThat(before.getFirst()).contains("local policy Invented clinic (file ");
      assertThat(clinician.get(path + "/report/1/policy").body()).isEqualTo(POLICY);
    }
    try (Running running = Running.on(location)) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      assertThat(clinician.get(path).body()).contains("positive").contains("No local policy");
      assertThat(papers(clinician, path)).isEqualTo(before);
      assertThat(clinician.get(path + "/report").body()).contains("Invented clinic (file ");
      clinician.post(path + "/report", Map.of("version", "2", "reason", "no policy any more"));
      assertThat(clinician.get(path + "/report/2").body()).contains("no local policy");
      assertThat(clinician.get(path + "/report/2/policy").statusCode()).isEqualTo(404);
      assertThat(papers(clinician, path)).isEqualTo(before);
      assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
    }
  }

  private static String withThreeBands(Caller clinician) {
    String path = Caller.place(clinician.post("/cases", Map.of("name", "three-bands")));
    clinician.post(path + "/bands", Map.of("bands.csfOnly", "3", "bands.shared", "0"));
    return path;
  }

  private static List<String> papers(Caller clinician, String path) {
    List<String> papers = new ArrayList<>();
    PAPERS.forEach(p -> papers.add(clinician.get(path + "/report/1" + p).body()));
    return papers;
  }

  /** Two files of one name are told apart. */
  @Test
  void policy_changedUnderItsName_isNamedOtherwise() throws IOException {
    RulesInForce first = rules(POLICY);
    RulesInForce second = rules(POLICY.replace("\"value\": 4", "\"value\": 3"));

    assertThat(first.facts().policy()).isNotEqualTo(second.facts().policy());
    assertThat(second.facts().number("bands.cut-off")).isEqualTo(3);
  }

  @Test
  void policy_thatIsNotValid_isToldOfWithItsPlacesAndNothingStarts() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("wrong.json"), POLICY.replace("bands.cut-off", "bands.cutoff"));
    Path data = folder.resolve("clinic");

    for (String command : List.of("serve", "demo")) {
      List<String> arguments = new ArrayList<>(List.of(command, "--policy", file.toString()));
      if (command.equals("serve")) {
        arguments.addAll(List.of("--data", data.toString()));
      }
      said.reset();
      assertThat(Clinic.run(console(), arguments.toArray(String[]::new))).isEqualTo(3);
      assertThat(said.toString(StandardCharsets.UTF_8))
          .contains("wrong.json: facts[\"bands.cutoff\"]: No fact has this key");
    }
    assertThat(Clinic.run(console(), "demo", "--policy", folder.resolve("none").toString()))
        .isEqualTo(3);
    assertThat(data).doesNotExist();
  }
}
