package cistern.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every input that the fuzzer begins with, and every one by which it ever found a fault. */
class CorpusTest {

  @ParameterizedTest
  @EnumSource(FuzzedReader.class)
  void read_everyKeptInput_isReadOrRefused(FuzzedReader reader) throws IOException {
    try (Stream<Path> files = Files.list(reader.corpus())) {
      List<Path> all = files.sorted().toList();
      assertThat(all).isNotEmpty();
      for (Path file : all) {
        byte[] input = Files.readAllBytes(file);
        assertThatCode(() -> reader.read(input)).as(file.toString()).doesNotThrowAnyException();
      }
    }
  }

  @Test
  void corpus_everyFolder_isOfAReader() throws IOException {
    try (Stream<Path> folders = Files.list(FuzzedReader.WORKUP.corpus().resolveSibling("."))) {
      assertThat(folders).hasSize(FuzzedReader.values().length);
    }
  }
}
