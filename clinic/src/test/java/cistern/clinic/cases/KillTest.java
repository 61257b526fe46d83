package cistern.clinic.cases;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.clinic.store.Folders;
import cistern.clinic.store.Location;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Killed in the middle of writing, the store holds everything that was acknowledged. */
class KillTest {

  private static final int KILLS = 5;
  private static final int KILLS_IN_A_STUDY = 200;

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void kill_underWriteLoad_losesNothingAcknowledged(Location location) throws Exception {
    assertThat(lost(location, KILLS)).isEmpty();
  }

  @Tag("long")
  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void kill_veryOften_losesNothingAcknowledged(Location location) throws Exception {
    assertThat(lost(location, KILLS_IN_A_STUDY)).isEmpty();
  }

  /**
   * What was acknowledged before a kill and is not there after it, and every fault of the trail.
   */
  private static List<String> lost(Location location, int kills) throws Exception {
    List<String> lost = new ArrayList<>();
    int acknowledgedInAll = 0;
    for (int kill = 0; kill < kills; kill++) {
      List<String> acknowledged = killed(location, kill);
      acknowledgedInAll += acknowledged.size();
      try (Clinic clinic = Clinic.open(location)) {
        acknowledged.stream().filter(a -> !isKept(clinic, a)).forEach(lost::add);
        lost.addAll(StoreVerification.check(clinic.store()).faults());
      }
    }
    assertThat(acknowledgedInAll).isGreaterThan(kills);
    String engine =
        switch (location) {
          case Location.Folder folder -> "SQLite";
          case Location.Server server -> "PostgreSQL";
        };
    if (lost.isEmpty()) {
      OutsideCheck.of(
              "Kills of the program in the middle of writing to " + engine,
              "every change that was acknowledged, and the chain of the audit trail",
              "none lost")
          .toTable("none lost in " + kills + " kills");
    }
    return lost;
  }

  private static boolean isKept(Clinic clinic, String acknowledged) {
    String[] parts = acknowledged.split(" ", -1);
    long number = Long.parseLong(parts[1]);
    if (parts[0].equals(Writer.RULE)) {
      return Writer.rules(clinic).all().size() >= number;
    }
    return clinic
        .cases()
        .version(parts[0], number)
        .filter(v -> v.workup().equals("{ \"version\": " + number + " }"))
        .isPresent();
  }

  /** Starts a writer, kills it a little later, and gives every line that it finished. */
  private static List<String> killed(Location location, int seed) throws Exception {
    Path home = Folders.make("killed");
    Path out = home.resolve("acknowledged.txt");
    Files.createFile(out);
    String where =
        switch (location) {
          case Location.Folder folder -> folder.folder().toString();
          case Location.Server server -> server.address();
        };
    Process writer =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Xmx200m",
                "-Djava.io.tmpdir=" + home,
                "-cp",
                System.getProperty("java.class.path"),
                Writer.class.getName(),
                where,
                Integer.toString(seed))
            .redirectOutput(out.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    for (int waited = 0; Files.size(out) == 0 && waited < 600 && writer.isAlive(); waited++) {
      Thread.sleep(50);
    }
    Thread.sleep(20 + 37L * (seed % 10));
    writer.destroyForcibly();
    assertThat(writer.waitFor(30, TimeUnit.SECONDS)).isTrue();
    return wholeLines(out);
  }

  private static List<String> wholeLines(Path out) throws IOException {
    String text = Files.readString(out, StandardCharsets.UTF_8);
    int end = text.lastIndexOf('\n');
    return end < 0 ? List.of() : text.substring(0, end).lines().toList();
  }
}
