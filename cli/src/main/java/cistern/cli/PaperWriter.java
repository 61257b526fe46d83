package cistern.cli;

import cistern.fact.Facts;
import cistern.report.json.IndentedJson;
import cistern.report.paper.Paper;
import cistern.report.paper.PaperPage;
import cistern.report.paper.PaperText;
import cistern.report.pdf.PdfDocument;
import cistern.report.pdf.SourceDate;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;

/**
 * Writes one paper, or the same as JSON, to a file or to standard output; a file is moved to its
 * place when it is whole.
 *
 * @param terminal where standard output is
 * @param facts in force
 * @param out the file asked for, if any
 */
record PaperWriter(Terminal terminal, Facts facts, Optional<String> out) {

  /** What made a paper: the program, the facts, the policy. */
  String foot() {
    String policy = facts.policy().map(name -> "local policy " + name).orElse("no local policy");
    return Cistern.software() + "; facts: " + facts.version() + "; " + policy;
  }

  void write(PaperFormat format, Paper paper, Consumer<JsonGenerator> json) {
    byte[] content =
        switch (format) {
          case TEXT -> PaperText.of(paper).getBytes(StandardCharsets.UTF_8);
          case HTML -> PaperPage.toHtml(paper).getBytes(StandardCharsets.UTF_8);
          case PDF ->
              SourceDate.of(PdfDocument.of(Cistern.software(), facts)).write(paper, List.of());
          case JSON -> generated(json);
        };
    Optional<String> file = out.filter(name -> !name.equals(Terminal.STANDARD));
    try {
      if (file.isPresent()) {
        WholeFile.write(Path.of(file.get()), content);
      } else {
        terminal.out().write(content);
        terminal.out().flush();
      }
    } catch (IOException e) {
      throw new NotWritten(file.orElse("The result"), e);
    }
  }

  private static byte[] generated(Consumer<JsonGenerator> json) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    IndentedJson.write(bytes, json);
    return bytes.toByteArray();
  }
}
