package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher itself, in a checkout whose Maven and whose JDK are small scripts that say what they
 * were asked for: what is tested is the launcher's choices, not the compiler.
 */
class LauncherTest {

  private static final Path SOURCES =
      Path.of(System.getProperty("cistern.root", "..")).toAbsolutePath();

  /** Everything that the launcher may call, so that neither a real Maven nor a real java is met. */
  private static final List<String> TOOLS =
      List.of(
          "sh",
          "find",
          "readlink",
          "mkdir",
          "ln",
          "rm",
          "rmdir",
          "mv",
          "cp",
          "date",
          "sleep",
          "grep",
          "head",
          "cat");

  private static final String MAVEN =
      """
      #!/bin/sh
      echo built >> "$0.calls"
      before=
      for word in "$@"; do
        [ "$before" != -pl ] || part=$word
        before=$word
        case $word in
          -Dbuild.folder=*) folder=${word#*=} ;;
          */pom.xml) root=${word%/pom.xml} ;;
        esac
      done
      echo "[INFO] Building Cistern medicine 1"
      sleep 1
      [ ! -e "$0.fails" ] || { echo "[ERROR] no such library"; exit 1; }
      mkdir -p "$root/$part/$folder/lib" "$root/$part/$folder/engine"
      echo jar > "$root/$part/$folder/cistern.jar"
      """;

  private static final String JAVA =
      """
      #!/bin/sh
      echo "${0%/bin/java} $*"
      """;

  @TempDir Path folder;

  private Path root = Path.of("");
  private Path tools = Path.of("");

  record Ended(int code, String out, String err) {}

  @BeforeEach
  void aFreshCheckout() throws IOException {
    root = Files.createDirectories(folder.resolve("a checkout"));
    tools = Files.createDirectories(folder.resolve("tools"));
    copy("cistern");
    copy("cli/launch/jdk.sh");
    Files.writeString(root.resolve("pom.xml"), "<project/>");
    Files.createDirectories(root.resolve("cli/src/main/java"));
    Files.writeString(root.resolve("cli/src/main/java/A.java"), "class A {}");
    for (String tool : TOOLS) {
      script(tools.resolve(tool), "#!/bin/sh\nexec " + toolOfTheMachine(tool) + " \"$@\"\n");
    }
    script(tools.resolve("mvn"), MAVEN);
  }

  @Nested
  class Jdk {

    @Test
    void start_javaHomeNewEnough_isTaken() throws Exception {
      Path jdk = jdk("jdk-25", "25.0.1");

      Ended ended = start(Map.of("JAVA_HOME", jdk.toString()), "interpret", "a b.json");

      assertThat(ended.code()).isZero();
      assertThat(ended.out()).startsWith(jdk.toString()).endsWith("interpret a b.json\n");
    }

    @Test
    void start_javaHomeTooOld_javaOnThePathIsTaken() throws Exception {
      Path old = jdk("jdk-17", "17.0.9");
      Path newer = jdk("jdk-26", "26");
      Files.createSymbolicLink(tools.resolve("java"), newer.resolve("bin/java"));

      Ended ended = start(Map.of("JAVA_HOME", old.toString()), "facts");

      assertThat(ended.out()).startsWith(newer.toString());
    }

    @Test
    void start_aRuntimeWithoutACompiler_isPassedOver() throws Exception {
      Path runtime = jdk("jre-25", "25");
      Files.delete(runtime.resolve("bin/javac"));
      Path jdk = jdk("jdk-25", "25");

      Ended ended =
          start(Map.of("JAVA_HOME", runtime.toString(), "HOME", home(jdk).toString()), "facts");

      assertThat(ended.out()).doesNotStartWith(runtime.toString());
    }

    @Test
    void start_noJdkNewEnough_oneSentenceSaysWhatToInstall() throws Exception {
      Path script = root.resolve("cistern");
      Files.writeString(
          script, Files.readString(script).replace("required=25\n", "required=900\n"));

      Ended ended = start(Map.of(), "facts");

      assertThat(ended.code()).isEqualTo(70);
      assertThat(ended.out()).isEmpty();
      assertThat(ended.err().lines())
          .singleElement()
          .asString()
          .contains("Java Development Kit, version 900", "JAVA_HOME");
    }

    private Path home(Path jdk) throws IOException {
      Path home = Files.createDirectories(folder.resolve("home"));
      Files.createDirectories(home.resolve(".jdks"));
      Files.createSymbolicLink(home.resolve(".jdks/25"), jdk);
      return home;
    }
  }

  @Nested
  class Build {

    private Map<String, String> environment = Map.of();

    @BeforeEach
    void aJdk() throws IOException {
      environment = Map.of("JAVA_HOME", jdk("jdk-25", "25").toString());
    }

    @Test
    void start_fresh_buildsAndSaysSoOnStandardErrorOnly() throws Exception {
      Ended ended = start(environment, "facts");

      assertThat(ended.err()).contains("Building Cistern", "  medicine", "Built.");
      assertThat(ended.out().lines()).singleElement().asString().endsWith("facts");
    }

    @Test
    void start_nothingChanged_doesNotBuildAgain() throws Exception {
      start(environment, "facts");

      Ended again = start(environment, "facts");

      assertThat(again.err()).isEmpty();
      assertThat(builds()).isEqualTo(1);
    }

    @Test
    void start_aSourceIsNewer_buildsAgain() throws Exception {
      start(environment, "facts");
      Files.setLastModifiedTime(
          root.resolve("cli/src/main/java/A.java"),
          FileTime.from(Files.getLastModifiedTime(built()).toInstant().plusSeconds(5)));

      start(environment, "facts");

      assertThat(builds()).isEqualTo(2);
    }

    @Test
    void start_theClinic_isBuiltAndStartedFromAJarOfItsOwn() throws Exception {
      start(environment, "facts");

      Ended ended = start(environment, "demo", "--port", "0");

      assertThat(ended.err()).contains("Built.").doesNotContain("start-up cache");
      assertThat(ended.out().lines())
          .singleElement()
          .asString()
          .contains("/.cistern/clinic-")
          .endsWith("demo --port 0");
      assertThat(start(environment, "facts").out()).contains("/.cistern/cli-");
      assertThat(start(environment, "serve").err()).isEmpty();
      assertThat(builds()).isEqualTo(2);
    }

    @Test
    void start_theDistributedEngine_isBuiltOnlyWhenItIsAskedFor() throws Exception {
      Ended here = start(environment, "cohort", "spark", "--out", "o");
      Ended there = start(environment, "cohort", "a.csv", "--engine", "spark", "--out", "o");

      assertThat(here.out()).contains("/.cistern/cli-");
      assertThat(there.err()).contains("280 MB", "Built.").doesNotContain("start-up cache");
      assertThat(there.out())
          .contains("/.cistern/cohort-job-", "/engine/* cistern.cohortjob.CohortJob")
          .endsWith("cohort a.csv --engine spark --out o\n");
      assertThat(builds()).isEqualTo(2);
    }

    @Test
    void start_withAMostOfMemory_givesItToTheProgram() throws Exception {
      String jdk = environment.getOrDefault("JAVA_HOME", "");

      assertThat(start(Map.of("JAVA_HOME", jdk, "CISTERN_MEMORY", "2g"), "facts").out())
          .contains(" -Xmx2g ");
      assertThat(start(Map.of("JAVA_HOME", jdk, "CISTERN_MEMORY", "2g -x"), "facts"))
          .matches(ended -> ended.code() == 2 && ended.err().contains("such as 2g"));
    }

    @Test
    void start_twoAtOnce_oneBuildsAndTheOtherWaits() throws Exception {
      Process first = begin(root.resolve("cistern"), environment, "one");
      Process second = begin(root.resolve("cistern"), environment, "two");

      assertThat(end(first).out()).endsWith("one\n");
      assertThat(end(second).out()).endsWith("two\n");
      assertThat(builds()).isEqualTo(1);
    }

    @Test
    void start_lockOfADeadStart_isTakenOver() throws Exception {
      Process dead = new ProcessBuilder("true").start();
      assertThat(dead.waitFor(Duration.ofSeconds(10))).isTrue();
      Files.createDirectories(root.resolve(".cistern"));
      Files.createSymbolicLink(root.resolve(".cistern/lock"), Path.of(Long.toString(dead.pid())));

      assertThat(start(environment, "facts").code()).isZero();
    }

    @Test
    void start_mavenFails_saysWhyAndLeavesNothing() throws Exception {
      Files.writeString(tools.resolve("mvn.fails"), "");

      Ended ended = start(environment, "facts");

      assertThat(ended.code()).isEqualTo(70);
      assertThat(ended.out()).isEmpty();
      assertThat(ended.err()).contains("no such library", "could not be built");
      assertThat(root.resolve(".cistern")).isEmptyDirectory();
    }

    @Test
    void start_noMaven_oneSentenceSaysWhatToInstall() throws Exception {
      Files.delete(tools.resolve("mvn"));

      Ended ended = start(environment, "facts");

      assertThat(ended.code()).isEqualTo(70);
      assertThat(ended.err().lines()).singleElement().asString().contains("Maven 3.8");
    }

    @Test
    void start_throughALinkFromElsewhere_findsItsCheckout() throws Exception {
      Path link = Files.createSymbolicLink(folder.resolve("link"), root.resolve("cistern"));

      assertThat(end(begin(link, environment, "facts")).code()).isZero();
      assertThat(built()).exists();
    }

    private Path built() throws IOException {
      Path store = root.resolve(".cistern");
      return store.resolve(Files.readString(store.resolve("cli")).strip()).resolve("started");
    }

    private long builds() throws IOException {
      return Files.readAllLines(tools.resolve("mvn.calls")).size();
    }
  }

  private Ended start(Map<String, String> environment, String... arguments) throws Exception {
    return end(begin(root.resolve("cistern"), environment, arguments));
  }

  /** Starts the launcher in a folder that is not its own, with nothing in the environment else. */
  private Process begin(Path launcher, Map<String, String> environment, String... arguments)
      throws IOException {
    List<String> words = new ArrayList<>(List.of(launcher.toString()));
    words.addAll(List.of(arguments));
    ProcessBuilder process = new ProcessBuilder(words).directory(folder.toFile());
    process.environment().clear();
    process.environment().put("PATH", tools.toString());
    process.environment().putAll(environment);
    return process.start();
  }

  private static Ended end(Process process) throws Exception {
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(Duration.ofMinutes(1))).isTrue();
    return new Ended(process.exitValue(), out, err);
  }

  private Path jdk(String name, String version) throws IOException {
    Path jdk = Files.createDirectories(folder.resolve(name));
    Files.createDirectories(jdk.resolve("bin"));
    Files.writeString(
        jdk.resolve("release"),
        "IMPLEMENTOR=\"Somebody\"\nJAVA_VERSION=\"" + version + "\"\nOS_NAME=\"Linux\"\n");
    script(jdk.resolve("bin/java"), JAVA);
    script(jdk.resolve("bin/javac"), JAVA);
    return jdk.toRealPath();
  }

  private void copy(String file) throws IOException {
    Path target = root.resolve(file);
    Files.createDirectories(target.getParent());
    Files.copy(SOURCES.resolve(file), target);
  }

  private static void script(Path file, String text) throws IOException {
    Files.writeString(file, text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private static Path toolOfTheMachine(String tool) {
    Path inBin = Path.of("/bin", tool);
    return Files.exists(inBin) ? inBin : Path.of("/usr/bin", tool);
  }
}
