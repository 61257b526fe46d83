package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Pinned: every paper and answer of every invented work-up, byte for byte, the program's and the
 * facts' version apart, and the JSON of 300 random work-ups by hash. They say that nothing changed,
 * not that it is right.
 *
 * <p>Nothing rewrites them but {@code mvn test -pl cli -am -Dtest=GoldenFilesTest
 * -Dgolden.write=true}; each difference is a decision, told in the commit that makes it. {@code
 * -Dgolden.dump=FOLDER} writes the random work-ups and their JSON, to be compared by eye.
 */
class GoldenFilesTest {

  private static final Path GOLDEN = Path.of("src/test/golden");
  private static final Path EXAMPLES = Path.of("../examples");
  private static final boolean WRITE = Boolean.getBoolean("golden.write");
  private static final int RANDOM_WORKUPS = 300;

  /** What differs between two runs of the same program on the same input, or between versions. */
  private static final List<Pattern> APART =
      List.of(
          Pattern.compile("Cistern development"),
          Pattern.compile("(?s)<style>.*?</style>"),
          Pattern.compile("\\bpanel \\d+(?:, [a-z]+ [0-9-]+)+"));

  record Paper(String file, List<String> command) {

    static Paper of(String file, String... command) {
      return new Paper(file, List.of(command));
    }

    @Override
    public String toString() {
      return file;
    }
  }

  private static Stream<Paper> papers() throws IOException {
    List<Paper> papers = new ArrayList<>();
    try (Stream<Path> files = Files.list(EXAMPLES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".json")).sorted().toList()) {
        String name = file.getFileName().toString().replace(".json", "");
        String in = file.toString();
        papers.add(Paper.of(name + ".txt", "interpret", in));
        papers.add(Paper.of(name + ".json", "interpret", "--format", "json", in));
        papers.add(Paper.of(name + ".html", "interpret", "--format", "html", in));
        papers.add(Paper.of(name + ".letter.txt", "interpret", "--for", "referrer", in));
        papers.add(Paper.of(name + ".patient.txt", "interpret", "--for", "patient", in));
        if (name.startsWith("plan-")) {
          papers.add(Paper.of(name + ".plan.txt", "plan", in));
          papers.add(Paper.of(name + ".plan.json", "plan", "--format", "json", in));
          papers.add(Paper.of(name + ".plan.html", "plan", "--format", "html", in));
          papers.add(Paper.of(name + ".plan.patient.txt", "plan", "--for", "patient", in));
        }
      }
    }
    for (String format : List.of("text", "json", "html")) {
      papers.add(
          Paper.of(
              "repeat.compare." + format,
              "compare",
              "--format",
              format,
              EXAMPLES.resolve("repeat-first.json").toString(),
              EXAMPLES.resolve("repeat-second.json").toString(),
              EXAMPLES.resolve("repeat-other-method.json").toString()));
    }
    return papers.stream();
  }

  @ParameterizedTest
  @MethodSource("papers")
  void paper_ofAnInventedWorkup_isAsItWas(Paper paper) throws IOException {
    Run run = Run.of(paper.command().toArray(String[]::new));
    assertThat(run.code()).as(run.err()).isZero();

    assertAsItWas(GOLDEN.resolve(paper.file()), versionsApart(run.out()));
  }

  @Test
  void json_ofRandomWorkups_isAsItWas() throws IOException {
    List<String> lines =
        IntStream.range(0, RANDOM_WORKUPS)
            .mapToObj(seed -> seed + " " + hash(jsonOf(seed)))
            .toList();

    assertAsItWas(GOLDEN.resolve("random.sha256"), String.join("\n", lines) + "\n");
  }

  private static String jsonOf(int seed) {
    String workup = RandomWorkup.of(new SplittableRandom(seed), "random-" + seed);
    Run run = Run.withInput(workup, "interpret", "--format", "json", "-");
    String answer = run.code() + run.err() + versionsApart(run.out());
    String dump = System.getProperty("golden.dump");
    if (dump != null) {
      write(Path.of(dump, seed + ".workup.json"), workup);
      write(Path.of(dump, seed + ".json"), answer);
    }
    return answer;
  }

  private static void assertAsItWas(Path file, String now) throws IOException {
    if (WRITE) {
      write(file, now);
    }
    assertThat(now).isEqualTo(Files.readString(file));
  }

  private static void write(Path file, String text) {
    try {
      Files.createDirectories(file.getParent());
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String versionsApart(String text) {
    String apart = text;
    for (Pattern pattern : APART) {
      apart = pattern.matcher(apart).replaceAll("(apart)");
    }
    return apart;
  }

  private static String hash(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
