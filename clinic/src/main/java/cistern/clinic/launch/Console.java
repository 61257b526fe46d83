package cistern.clinic.launch;

import java.io.PrintStream;

/**
 * Where the program speaks.
 *
 * @param out what was asked for
 * @param err what went wrong
 */
record Console(PrintStream out, PrintStream err) {

  void say(String line) {
    out.println(line);
  }
}
