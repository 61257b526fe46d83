package cistern.clinic.trail;

import cistern.clinic.audit.AuditEntry;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.setting.Setting;
import cistern.clinic.web.Html;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * One page of the trail.
 *
 * @param place which part
 * @param entries the newest first
 * @param isNewer whether newer entries follow those shown
 * @param isOlder whether older entries come before those shown
 */
record TrailPage(TrailPart place, List<AuditEntry> entries, boolean isNewer, boolean isOlder) {

  TrailPage {
    entries = List.copyOf(entries);
  }

  /** The page at a place; one entry more is asked for, which tells whether there is another. */
  static TrailPage of(JdbcClient sql, TrailPart place) {
    int most = Setting.ENTRIES_A_PAGE.number();
    if (place.after() > 0) {
      List<AuditEntry> found = AuditTrail.after(sql, place.filter(), place.after(), most + 1);
      boolean isNewer = found.size() > most;
      return new TrailPage(place, isNewer ? found.subList(1, most + 1) : found, isNewer, true);
    }
    long before = place.before() > 0 ? place.before() : Long.MAX_VALUE;
    List<AuditEntry> found = AuditTrail.before(sql, place.filter(), before, most + 1);
    boolean isOlder = found.size() > most;
    return new TrailPage(
        place, isOlder ? found.subList(0, most) : found, place.before() > 0, isOlder);
  }

  /** The ways to the pages beside it. */
  Node toWays() {
    List<Element> ways = new ArrayList<>();
    if (isNewer && !entries.isEmpty()) {
      ways.add(Html.link(place.withAfter(entries.getFirst().number()).toPath(), "Newer entries"));
    }
    if (isOlder && !entries.isEmpty()) {
      ways.add(Html.link(place.withBefore(entries.getLast().number()).toPath(), "Older entries"));
    }
    if (isNewer || entries.isEmpty()) {
      ways.add(Html.link(new TrailPart(place.filter(), 0, 0).toPath(), "The newest"));
    }
    return Html.division("actions").with(ways);
  }
}
