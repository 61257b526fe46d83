package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Engines;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** More cases than a page shows, and one that the rules in force reject. */
@TestInstance(Lifecycle.PER_CLASS)
class ManyCasesTest {

  private static final Pattern LINK = Pattern.compile("<a href=\"/cases/[0-9a-f-]{36}\">([^<]+)<");

  private final Running running = Running.on(Engines.folder());
  private Caller clinician = running.stranger();

  /** Time passes in some tests, and a session ends with it. */
  @BeforeEach
  void comeIn() {
    clinician = running.signedIn(Role.CLINICIAN);
  }

  @AfterAll
  void stop() {
    assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
    running.close();
  }

  private String add(String workup) {
    String by = running.person(Role.CLINICIAN).id();
    return "/cases/" + running.clinic().cases().add("begun", workup, by).caseId();
  }

  private static List<String> names(HttpResponse<String> page) {
    List<String> names = new ArrayList<>();
    Matcher matcher = LINK.matcher(page.body());
    while (matcher.find()) {
      names.add(matcher.group(1));
    }
    return names;
  }

  @Test
  void cases_moreThanAPageShows_areAllReachedAndFound() {
    int many = 2 * Setting.CASES_A_PAGE.number() + 1;
    List<String> added = IntStream.range(0, many).mapToObj(i -> "many-" + i + "-x").toList();
    added.forEach(name -> add("{\"workup\":1,\"id\":\"" + name + "\",\"results\":[]}"));

    Running.day(clinician);

    List<String> reached = new ArrayList<>();
    for (int page = 1; page <= 3; page++) {
      HttpResponse<String> shown = clinician.get("/cases?page=" + page);
      assertThat(names(shown)).hasSizeLessThanOrEqualTo(Setting.CASES_A_PAGE.number());
      assertThat(shown.body().contains("Older cases")).isEqualTo(page < 3);
      reached.addAll(names(shown));
    }
    assertThat(reached).containsAll(added).doesNotHaveDuplicates();

    HttpResponse<String> found = clinician.post("/cases/find", Map.of("text", "MANY-0-"));
    assertThat(names(found)).containsExactly("many-0-x");
    assertThat(found.uri().toString()).doesNotContain("MANY");
    assertThat(names(clinician.post("/cases/find", Map.of("text", "%")))).isEmpty();
    assertThat(clinician.get("/cases?page=0").body()).contains("Older cases");
  }

  @Test
  void day_longAfter_stillShowsWhatIsNotSigned() {
    String results =
        "\"results\":[{\"analyte\":\"albumin\",\"in\":\"csf\",\"value\":2,\"unit\":\"g/L\"}]}";
    add("{\"workup\":1,\"id\":\"waits-long\"," + results);
    String signed = add("{\"workup\":1,\"id\":\"signed-long\"," + results);
    clinician.post(signed + "/report", Map.of("version", "1"));
    assertThat(Running.day(clinician)).contains("waits-long");

    running.pass(Duration.ofDays(Setting.DAY_DAYS.number() + 1));

    Caller later = running.signedIn(Role.CLINICIAN);
    assertThat(Running.day(later)).contains("waits-long").doesNotContain("signed-long");
    assertThat(names(later.post("/cases/find", Map.of("text", "signed-long")))).hasSize(1);
  }

  @Test
  void day_whileCasesAreStillRead_isShownWithoutThemAndSaysSo() {
    add(
        "{\"workup\":1,\"id\":\"read-late\",\"results\":["
            + "{\"analyte\":\"albumin\",\"in\":\"csf\",\"value\":2,\"unit\":\"g/L\"}]}");
    running.clock().hold();

    String held = clinician.get("/day").body();
    running.clock().release();

    assertThat(held)
        .contains("Still reading ")
        .contains("data-renew=\"2\"")
        .contains("href=\"/day\">Look again")
        .doesNotContain("read-late");
    assertThat(Running.day(clinician)).contains("read-late").doesNotContain("data-renew");
  }

  @Test
  void case_thatTheRulesInForceReject_isShownWithItsReasonsAndPutRight() {
    String rejected =
        "{\"workup\":1,\"id\":\"rejected\",\"results\":[{\"analyte\":\"albumin\",\"in\":\"csf\","
            + "\"value\":2,\"unit\":\"cubit\"}]}";
    String path = add(rejected);

    for (String screen : List.of("", "/results", "/says", "/report", "/compare", "/paste")) {
      HttpResponse<String> shown = clinician.get(path + screen);
      assertThat(shown.statusCode()).as(screen).isEqualTo(200);
      assertThat(shown.body()).contains("results[0].unit").contains("cubit");
    }
    assertThat(running.signedIn(Role.LABORATORY).get(path).body())
        .contains("results[0].unit")
        .doesNotContain("<textarea");
    assertThat(clinician.get("/cases").body()).contains("cannot be read");
    assertThat(clinician.get("/day").statusCode()).isEqualTo(200);
    assertThat(clinician.get(path + "/file").body()).isEqualTo(rejected);

    assertThat(clinician.post(path + "/file", Map.of("file", "{")).body()).contains("Put it right");
    HttpResponse<String> put =
        clinician.post(path + "/file", Map.of("file", rejected.replace("cubit", "g/L")));

    assertThat(Caller.place(put)).isEqualTo(path);
    assertThat(clinician.get(path).body()).contains("Where it stands");
    assertThat(clinician.get(path + "/versions/1").body()).isEqualTo(rejected);
  }
}
