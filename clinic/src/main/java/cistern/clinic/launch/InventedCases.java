package cistern.clinic.launch;

import cistern.bands.BandReport.GelNamed;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.gel.Gels;
import cistern.clinic.gel.KeptReading;
import cistern.clinic.status.Medicine;
import cistern.exchange.workup.WorkupReading;
import cistern.gel.lanes.LanePlan;
import cistern.report.paper.PageFrame;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
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

  /** A work-up with the picture of the gel that it names kept and read, named as it is kept. */
  static String withGel(String workup, CaseContext context, String by) {
    Medicine medicine = context.medicine();
    if (medicine.read(workup) instanceof WorkupReading.Understood understood
        && understood.workup().bands() instanceof GelNamed named) {
      Gels.Asker asker = new Gels.Asker(by, medicine.madeBy(), medicine.facts());
      try {
        KeptReading kept =
            context.gels().add(picture(named.file()), LanePlan.parse(named.lanes()), asker);
        return workup.replace("\"" + named.file() + "\"", "\"" + kept.picture() + "\"");
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return workup;
  }

  private static byte[] picture(String name) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(InventedCases.class.getResourceAsStream("examples/" + name))) {
      return in.readAllBytes();
    }
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
