package cistern.exchange.lab;

import java.util.Optional;
import java.util.stream.Stream;

/** The id of a work-up that a report becomes: of the report, else of the person. */
final class WorkupId {

  private static final int LONGEST = 64;

  private WorkupId() {}

  static String of(LabReport report, String suffix) {
    String base =
        Stream.of(report.id(), report.person().id())
            .flatMap(Optional::stream)
            .map(WorkupId::plain)
            .filter(text -> !text.isEmpty())
            .findFirst()
            .orElse("report");
    return base.substring(0, Math.min(base.length(), LONGEST - suffix.length())) + suffix;
  }

  private static String plain(String id) {
    return id.strip().replaceAll("[^A-Za-z0-9._-]+", "-").replaceAll("^-+|-+$", "");
  }
}
