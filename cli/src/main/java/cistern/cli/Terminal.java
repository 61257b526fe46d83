package cistern.cli;

import cistern.exchange.json.InputProblem;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;

/**
 * Where a command reads and writes.
 *
 * @param in standard input
 * @param out standard output, results only
 * @param err standard error, problems and progress
 */
record Terminal(InputStream in, OutputStream out, PrintStream err) {

  /** The name by which standard input is asked for. */
  static final String STANDARD = "-";

  /** Says what is wrong with an input, and where in it. */
  void say(String input, InputProblem problem) {
    String name = input.equals(STANDARD) ? "standard input" : input;
    err.println(name + ": " + problem.toText());
  }
}
