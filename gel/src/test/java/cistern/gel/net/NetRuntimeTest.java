package cistern.gel.net;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where the native part of the runtime is kept between runs. */
class NetRuntimeTest {

  @Test
  void isUnpacked_namedFolder_holdsTheWholeOfItAndNothingBeside(@TempDir Path app)
      throws IOException {
    Path folder = app.resolve("net-runtime");

    assertThat(NetRuntime.isUnpacked(folder)).isTrue();

    assertThat(folder.resolve(System.mapLibraryName("onnxruntime"))).isNotEmptyFile();
    assertThat(folder.resolve(System.mapLibraryName("onnxruntime4j_jni"))).isNotEmptyFile();
    try (Stream<Path> beside = Files.list(app)) {
      assertThat(beside).containsExactly(folder);
    }
  }

  @Test
  void isUnpacked_placeThatCannotBe_isLeftToTheRunAlone(@TempDir Path app) throws IOException {
    Path file = Files.writeString(app.resolve("file"), "not a folder");

    assertThat(NetRuntime.isUnpacked(file.resolve("net-runtime"))).isFalse();
  }
}
