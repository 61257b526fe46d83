package cistern.clinic.launch;

import cistern.clinic.store.Folders;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The program in a process of its own, as the launcher starts it. */
final class Started implements AutoCloseable {

  /** The file in its folder that holds what it said. */
  static final String SAID = "said.txt";

  private static final Duration PATIENCE = Duration.ofSeconds(90);
  private static final Pattern PORT = Pattern.compile("http://127\\.0\\.0\\.1:(\\d+)/");
  private static final Pattern CODE = Pattern.compile("[A-Z2-9]{4}(?:-[A-Z2-9]{4}){3}");

  private final Process process;
  private final Path folder;

  private Started(Process process, Path folder) {
    this.process = process;
    this.folder = folder;
  }

  static Started with(String... arguments) {
    try {
      Path folder = Folders.make("started");
      List<String> command =
          new ArrayList<>(
              List.of(
                  // A shell's background jobs ignore Ctrl-C, and so would what they start.
                  "env",
                  "--default-signal=INT",
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "--enable-native-access=ALL-UNNAMED",
                  "-XX:+UseSerialGC",
                  "-XX:TieredStopAtLevel=1",
                  "-Xmx300m",
                  "-Djava.io.tmpdir=" + folder,
                  "-cp",
                  System.getProperty("java.class.path"),
                  "cistern.clinic.launch.Clinic"));
      command.addAll(List.of(arguments));
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve(SAID).toFile())
              .start();
      return new Started(process, folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The port, once the program listens. */
  int port() {
    return Integer.parseInt(awaited(PORT, 1));
  }

  /** The one-time code that it printed. */
  String code() {
    return awaited(CODE, 0);
  }

  private String awaited(Pattern pattern, int group) {
    for (long waited = 0; waited < PATIENCE.toMillis(); waited += 100) {
      Matcher matcher = pattern.matcher(said());
      if (matcher.find() && said().contains("Ctrl-C")) {
        return matcher.group(group);
      }
      if (!process.isAlive()) {
        throw new AssertionError("it ended: " + said());
      }
      pause();
    }
    throw new AssertionError("nothing like " + pattern + " in: " + said());
  }

  private static void pause() {
    try {
      Thread.sleep(100);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Everything that it said so far. */
  String said() {
    try {
      return Files.readString(folder.resolve(SAID), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Where it keeps what passes. */
  Path folder() {
    return folder;
  }

  /** Its exit code once it ends by itself. */
  int ended() {
    try {
      if (!process.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
        throw new AssertionError("it does not end: " + said());
      }
      return process.exitValue();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Sends it a signal: INT is Ctrl-C, KILL leaves it no time for anything. */
  void signal(String name) {
    try {
      new ProcessBuilder("kill", "-" + name, Long.toString(process.pid())).start().waitFor();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
    ended();
  }
}
