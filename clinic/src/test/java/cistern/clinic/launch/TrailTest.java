package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Engines;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** The audit trail as an auditor turns its pages and looks for a case or a person. */
@TestInstance(Lifecycle.PER_CLASS)
class TrailTest {

  private static final Pattern NUMBER = Pattern.compile("<tr><td[^>]*>(\\d+)</td>");

  private final Running running = Running.on(Engines.folder());
  private final Caller auditor = running.signedIn(Role.AUDITOR);

  @AfterAll
  void stop() {
    running.close();
  }

  private static List<Long> numbers(HttpResponse<String> page) {
    return NUMBER.matcher(page.body()).results().map(m -> Long.valueOf(m.group(1))).toList();
  }

  private static String way(HttpResponse<String> page, String words) {
    Matcher link = Pattern.compile("href=\"(/trail[^\"]*)\">" + words + "<").matcher(page.body());
    return link.find() ? link.group(1).replace("&amp;", "&") : "";
  }

  @Test
  void entries_moreThanAPageShows_areAllReachedBackAndForth() {
    int most = Setting.ENTRIES_A_PAGE.number();
    AuditTrail trail = AuditTrail.of(Clock.systemUTC());
    running
        .store()
        .change(
            sql -> {
              for (int i = 0; i < 2 * most; i++) {
                trail.append(sql, Note.of("", Action.STORE_COPIED, ""));
              }
              return most;
            });

    HttpResponse<String> newest = auditor.get("/trail");
    assertThat(newest.body()).doesNotContain("Newer entries");
    List<Long> reached = new ArrayList<>(numbers(newest));
    HttpResponse<String> page = newest;
    while (!way(page, "Older entries").isEmpty()) {
      page = auditor.get(way(page, "Older entries"));
      assertThat(numbers(page)).hasSizeLessThanOrEqualTo(most);
      reached.addAll(numbers(page));
    }

    assertThat(reached).hasSize(Math.toIntExact(reached.getFirst())).doesNotHaveDuplicates();
    assertThat(reached.getLast()).isEqualTo(1);
    HttpResponse<String> back = auditor.get(way(page, "Newer entries"));
    assertThat(numbers(back)).hasSize(most).contains(numbers(page).getFirst() + 1);
    assertThat(numbers(auditor.get(way(back, "The newest"))).getFirst())
        .isGreaterThan(reached.getFirst());
  }

  @Test
  void entries_ofACaseAndOfAPerson_areFoundByIdentifiersOnly() {
    Caller clinician = running.signedIn(Role.CLINICIAN);
    String path = Caller.place(clinician.post("/cases", Map.of("name", "case-1")));
    String id = path.substring("/cases/".length());
    clinician.post("/cases", Map.of("name", "case-2"));
    running.signedIn(Role.NURSE).get(path);
    String nurse = running.person(Role.NURSE).id();

    HttpResponse<String> sent =
        auditor.post("/trail/find", Map.of("case", id.toUpperCase(java.util.Locale.ROOT)));
    assertThat(Caller.place(sent)).isEqualTo("/trail?case=" + id);
    HttpResponse<String> ofCase = auditor.get(Caller.place(sent));
    assertThat(numbers(ofCase)).hasSize(2);
    assertThat(ofCase.body())
        .contains(id + "/version/1")
        .contains("case-read")
        .contains("Invented nurse");
    String both = Caller.place(auditor.post("/trail/find", Map.of("case", id, "person", nurse)));
    assertThat(numbers(auditor.get(both))).hasSize(1);
    assertThat(auditor.get("/trail").body()).contains("href=\"/trail?case=" + id + "\"");
    HttpResponse<String> none =
        auditor.post("/trail/find", Map.of("case", "somebody's name", "person", nurse));
    assertThat(none.statusCode()).isEqualTo(422);
    assertThat(none.body()).contains("by its number").doesNotContain("somebody");
    assertThat(numbers(auditor.get("/trail?case=name&before=x"))).hasSizeGreaterThan(2);
  }
}
