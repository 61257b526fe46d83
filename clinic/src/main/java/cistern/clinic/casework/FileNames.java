package cistern.clinic.casework;

import cistern.clinic.cases.SignedReport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Names of files that say of what, when and which: {@code case-7-2034-05-09-letter-1.pdf}. */
final class FileNames {

  private static final Pattern NAME = Pattern.compile("\"id\"\\s*:\\s*\"([A-Za-z0-9._-]{1,64})\"");
  private static final int DAY = "2034-05-09".length();

  private FileNames() {}

  /**
   * The name of a file of a signed report.
   *
   * @param kind with its ending, such as {@code letter.pdf}
   */
  static String of(SignedReport report, String kind) {
    Matcher name = NAME.matcher(report.content().workup());
    int dot = kind.lastIndexOf('.');
    return (name.find() ? name.group(1) : report.caseId())
        + "-"
        + report.at().substring(0, DAY)
        + "-"
        + kind.substring(0, dot)
        + "-"
        + report.number()
        + kind.substring(dot);
  }
}
