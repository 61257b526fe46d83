package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.store.Engines;
import cistern.clinic.store.Location;
import cistern.clinic.store.Store;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands as a person types them, two of them in a process of their own. */
class CommandsTest {

  @TempDir private Path folder;

  private final ByteArrayOutputStream said = new ByteArrayOutputStream();

  private int run(String... arguments) {
    PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
    return Clinic.run(new Console(out, out), arguments);
  }

  private String said() {
    return said.toString(StandardCharsets.UTF_8);
  }

  @Test
  void demo_opened_letsInOnceAndGoesWithCtrlC() throws IOException {
    try (Started demo = Started.with("demo", "--port", "0")) {
      Caller caller = new Caller(demo.port());
      assertThat(caller.get("/sign-in?code=" + demo.code()).body()).contains("Come in");
      assertThat(Caller.place(caller.enter(demo.code()))).isEqualTo("/day");
      assertThat(read(caller)).contains("typical-ms").contains("invented");
      assertThat(caller.get("/day").body()).contains("Headache calls due");
      assertThat(new Caller(demo.port()).enter(demo.code()).statusCode()).isEqualTo(401);

      demo.signal("INT");

      assertThat(demo.ended()).isEqualTo(130);
      assertThat(demo.said()).doesNotContain("WARN").doesNotContain("ERROR");
      try (Stream<Path> left = Files.list(demo.folder())) {
        assertThat(left.map(f -> f.getFileName().toString())).containsExactly(Started.SAID);
      }
    }
  }

  /** The cases, once all of them are read. */
  private static String read(Caller caller) {
    String cases = caller.get("/cases").body();
    while (cases.contains("being read")) {
      cases = caller.get("/cases").body();
    }
    return cases;
  }

  @Test
  void serve_firstStart_printsACodeForTheFirstAdministratorOnly() {
    String data = folder.resolve("clinic").toString();
    String code;
    try (Started serve = Started.with("serve", "--port", "0", "--data", data)) {
      code = serve.code();
      Caller chief = new Caller(serve.port());
      Map<String, String> first =
          Map.of(
              "code",
              code,
              "name",
              "chief",
              "fullName",
              "Dr Invented",
              "password",
              "an invented sentence");
      assertThat(Caller.place(chief.post("/first", first))).isEqualTo("/accounts");
      serve.signal("TERM");
      assertThat(serve.ended()).isEqualTo(143);
    }
    try (Started again = Started.with("serve", "--port", "0", "--data", data)) {
      Caller chief = new Caller(again.port());
      assertThat(again.said()).doesNotContain("One-time code");
      assertThat(
              Caller.place(
                  chief.post(
                      "/sign-in", Map.of("name", "chief", "password", "an invented sentence"))))
          .isEqualTo("/accounts");
    }
  }

  @Test
  void backup_whileTheClinicRuns_isRestoredToBothEnginesAndWhole() {
    Location.Folder data = Engines.folder();
    Location.Server server = Engines.server();
    String copy = folder.resolve("copy").toString();
    try (Running running = Running.on(data)) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      String path = Caller.place(clinician.post("/cases", Map.of("name", "case-1")));
      clinician.post(path + "/report", Map.of("version", "1"));

      assertThat(run("backup", copy, "--data", data.folder().toString())).isZero();
    }
    assertThat(run("restore", copy, "--database", server.address())).isZero();
    assertThat(run("verify", "--database", server.address())).isZero();
    String second = folder.resolve("second").toString();
    assertThat(run("backup", second, "--database", server.address())).isZero();
    String third = folder.resolve("third").toString();
    assertThat(run("restore", second, "--data", third)).isZero();
    assertThat(run("verify", "--data", third)).isZero();
    assertThat(run("verify", "--data", data.folder().toString())).isZero();
    assertThat(said().lines().filter(l -> l.startsWith("Whole:")).distinct()).hasSize(1);
  }

  @Test
  void restore_overAStoreThatHoldsSomething_leavesItAlone() {
    Location.Folder data = Engines.folder();
    try (Running running = Running.on(data)) {
      running.person(Role.NURSE);
    }
    String copy = folder.resolve("copy").toString();
    run("backup", copy, "--data", data.folder().toString());

    assertThat(run("restore", copy, "--data", data.folder().toString())).isEqualTo(4);
    assertThat(said()).contains("holds something already");
    assertThat(run("backup", copy, "--data", data.folder().toString())).isEqualTo(2);
    assertThat(run("restore", folder.resolve("none").toString())).isEqualTo(2);
  }

  @Test
  void restore_ofABackupThatSomebodyChanged_writesNothing() {
    Location.Folder data = Engines.folder();
    try (Running running = Running.on(data)) {
      running.person(Role.NURSE);
      running
          .store()
          .change(
              sql -> {
                sql.sql("drop trigger audit_no_update").update();
                return sql.sql("update audit set action = 'x'").update();
              });
    }
    String target = folder.resolve("target").toString();

    assertThat(run("restore", data.folder().toString(), "--data", target)).isEqualTo(3);
    assertThat(run("verify", "--data", data.folder().toString())).isEqualTo(3);
    assertThat(said()).contains("entry 1 is not as it was written");
    assertThat(Files.exists(Path.of(target))).isFalse();
  }

  @Test
  void store_thatCannotBeOpened_isToldOfInASentence() throws IOException {
    Path file = Files.writeString(folder.resolve("cistern.db"), "this is no store, ".repeat(99));
    Path notAFolder = Files.writeString(folder.resolve("plain"), "x");

    assertThat(run("verify", "--data", folder.toString())).isEqualTo(4);
    assertThat(said()).contains("its file is damaged");
    assertThat(Files.readString(file)).startsWith("this is no store");
    assertThat(run("verify", "--data", notAFolder.resolve("x").toString())).isEqualTo(3);
    assertThat(said()).contains("There is no store in");
    assertThat(run("verify", "--database", "mysql://elsewhere/x")).isEqualTo(2);
    assertThat(run("verify", "--database", "postgresql://127.0.0.1:1/none")).isEqualTo(4);
    assertThat(said()).contains("The database cannot be reached");
    assertThat(run()).isEqualTo(2);
  }

  @Test
  void verifyAndBackup_whereThereIsNoStore_makeNone() throws IOException {
    Path none = folder.resolve("mistyped");
    Path empty = Files.createDirectory(folder.resolve("empty"));
    Files.createFile(empty.resolve("cistern.db"));

    assertThat(run("verify", "--data", none.toString())).isEqualTo(3);
    assertThat(run("backup", folder.resolve("b").toString(), "--data", none.toString()))
        .isEqualTo(3);
    assertThat(run("let-in", "chief", "--data", none.toString())).isEqualTo(3);
    assertThat(run("verify", "--data", empty.toString())).isNotZero();
    assertThat(run("verify", "--database", Engines.server().address())).isEqualTo(3);

    assertThat(none).doesNotExist();
    assertThat(Files.size(empty.resolve("cistern.db"))).isZero();
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left.map(f -> f.getFileName().toString())).containsExactly("empty");
    }
  }

  @Test
  void store_andItsBackup_areClosedToOthersWhateverTheUmask() throws IOException {
    Path data = folder.resolve("data");
    Path copy = folder.resolve("copy");
    try (Running running = Running.on(new Location.Folder(data))) {
      running.person(Role.NURSE);
      assertThat(run("backup", copy.toString(), "--data", data.toString())).isZero();
      checkClosed(data);
    }
    checkClosed(copy);
    assertThat(said()).contains("account: 1;");
  }

  private static void checkClosed(Path of) throws IOException {
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(of)))
        .isEqualTo("rwx------");
    try (Stream<Path> files = Files.list(of)) {
      for (Path file : files.toList()) {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
            .as(file.toString())
            .isEqualTo("rw-------");
      }
    }
  }

  @Test
  void verify_withAHashThatWasNoted_saysWhetherTheTrailHoldsIt() {
    Location.Folder data = Engines.folder();
    try (Running running = Running.on(data)) {
      running.person(Role.NURSE);
    }
    String at = data.folder().toString();
    assertThat(run("verify", "--data", at)).isZero();
    String head = said().lines().filter(l -> l.matches("[0-9a-f]{64}")).findFirst().orElseThrow();

    assertThat(run("verify", "--data", at, "--contains", head)).isZero();
    assertThat(run("verify", "--data", at, "--contains", head.replace(head.charAt(0), 'g')))
        .isEqualTo(3);
  }

  @Test
  void verify_ofAStoreWhoseSignerWasRenamed_saysSo() {
    Location.Folder data = Engines.folder();
    String nurse;
    try (Running running = Running.on(data)) {
      nurse = running.person(Role.NURSE).id();
      running.store().change(sql -> sql.sql("update account set full_name = 'Other'").update());
    }
    assertThat(run("verify", "--data", data.folder().toString())).isEqualTo(3);
    assertThat(said()).contains("account " + nurse + " is not as entry");
  }

  @Test
  void letIn_onTheConsole_printsACodeForAnAccountThatIsThere() {
    Location.Folder data = Engines.folder();
    try (Running running = Running.on(data)) {
      running.person(Role.NURSE);
      assertThat(run("let-in", "Nurse", "--data", data.folder().toString())).isZero();
      assertThat(said()).containsPattern("Invented nurse: [A-Z0-9]{4}(-[A-Z0-9]{4}){3}");
      Map<String, String> before = Map.of("name", "nurse", "password", Running.PASSWORD);
      assertThat(running.stranger().post("/sign-in", before).statusCode()).isEqualTo(401);
    }
    assertThat(run("let-in", "nobody", "--data", data.folder().toString())).isEqualTo(3);
  }

  @Test
  void invent_intoANewStore_makesAsManyCasesAndPeople() {
    String data = folder.resolve("invented").toString();
    assertThat(run("invent", "25", "--data", data)).isZero();
    assertThat(run("invent", "25", "--data", data)).isEqualTo(4);
    assertThat(run("verify", "--data", data)).isZero();
    assertThat(said()).contains("account: 5;").contains("clinic case: 25;");
  }

  @Test
  void serve_onAPortThatIsTaken_saysSo() {
    Location.Folder data = Engines.folder();
    try (Running running = Running.on(Engines.folder())) {
      String port = Integer.toString(running.clinic().port());

      assertThat(run("serve", "--port", port, "--data", data.folder().toString())).isEqualTo(4);
      assertThat(said()).contains("The port is in use");
    }
    try (Store store = Store.open(data)) {
      assertThat(store.location()).isEqualTo(data);
    }
  }

  @Test
  void serve_withAProxyThatIsNoneOrWithoutHttps_saysSo() {
    String data = folder.resolve("none").toString();

    assertThat(run("serve", "--data", data, "--behind-https", "--proxy", "the-proxy")).isEqualTo(2);
    assertThat(said()).contains("an address such as 10.0.0.5");
    assertThat(run("serve", "--data", data, "--proxy", "10.0.0.5")).isEqualTo(2);
    assertThat(said()).contains("--proxy is said with --behind-https");
    assertThat(Files.exists(Path.of(data))).isFalse();
  }

  @Test
  void help_ofEveryCommand_showsAnExample() {
    for (String command :
        new String[] {"demo", "serve", "verify", "backup", "restore", "let-in", "invent"}) {
      said.reset();
      assertThat(run(command, "--help")).isZero();
      assertThat(said()).contains("Example: cistern " + command);
    }
  }
}
