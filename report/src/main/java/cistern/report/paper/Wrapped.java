package cistern.report.paper;

import java.util.regex.Pattern;

/** Sentences broken at spaces so that no line is longer than a column allows. */
public final class Wrapped {

  /** The widest line, in characters. */
  static final int WIDTH = 96;

  private static final Pattern SPACES = Pattern.compile("\\s+");

  private Wrapped() {}

  /** Text with a first-line prefix; following lines are indented as deep. */
  public static String of(String prefix, String text) {
    String indent = " ".repeat(prefix.length());
    StringBuilder all = new StringBuilder();
    StringBuilder line = new StringBuilder(prefix);
    boolean isStart = true;
    for (String word : SPACES.split(text.strip(), -1)) {
      if (!isStart && line.length() + 1 + word.length() > WIDTH) {
        all.append(line).append('\n');
        line = new StringBuilder(indent);
        isStart = true;
      }
      line.append(isStart ? "" : " ").append(word);
      isStart = false;
    }
    return all.append(line).append('\n').toString();
  }
}
