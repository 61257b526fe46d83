package cistern.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * One run of a command in this process.
 *
 * @param code the exit code
 * @param out standard output
 * @param err standard error
 */
record Run(int code, String out, String err) {

  static Run of(String... arguments) {
    return withInput("", arguments);
  }

  static Run withInput(String input, String... arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Terminal terminal =
        new Terminal(
            new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)),
            out,
            new PrintStream(err, true, StandardCharsets.UTF_8));
    int code = Cistern.run(terminal, arguments);
    return new Run(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
