package cistern.clinic.door;

import cistern.report.page.PageFrame;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.regex.Pattern;

/**
 * The invented work-ups of the examples with their times moved, so that some punctures are planned,
 * some are just done and some lie back.
 */
final class InventedCases {

  private static final Pattern TIME =
      Pattern.compile(
          "\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:\\d\\d(\\.\\d+)?)?(Z|[+-]\\d\\d:\\d\\d)");

  private InventedCases() {}

  /** The text of each work-up file, in the order in which the cases began. */
  static List<String> of(Clock clock) {
    return PageFrame.read(InventedCases.class, "demo.tsv")
        .lines()
        .skip(1)
        .map(line -> line.split("\t", -1))
        .map(cells -> moved(cells, clock))
        .toList();
  }

  private static String moved(String[] cells, Clock clock) {
    OffsetDateTime target =
        clock.instant().atOffset(java.time.ZoneOffset.UTC).minusHours(Long.parseLong(cells[2]));
    Duration by = Duration.between(OffsetDateTime.parse(cells[1]), target);
    Duration whole = Duration.ofMinutes(by.toMinutes());
    String text = PageFrame.read(InventedCases.class, "examples/" + cells[0] + ".json");
    return TIME.matcher(text)
        .replaceAll(time -> OffsetDateTime.parse(time.group()).plus(whole).toString());
  }
}
