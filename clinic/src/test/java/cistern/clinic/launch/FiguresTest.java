package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.store.Engines;
import java.net.http.HttpResponse;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** The figures of a clinic: counted here by hand, over punctures that are written for it. */
@TestInstance(Lifecycle.PER_CLASS)
class FiguresTest {

  private final Running running = Running.on(Engines.folder());
  private final Caller clinician = running.signedIn(Role.CLINICIAN);

  @BeforeAll
  void keepCases() {
    keep(puncture("one", "migraine", "2034-02-01", "2034-02-01"));
    keep(puncture("two", "migraine & <b>more</b>", "2034-03-01", "2034-03-08"));
    keep(puncture("three", "MS", "2034-04-01", "2034-04-01"));
    keep("{\"workup\":1,\"id\":\"four\",\"person\":{\"ageYears\":40}}");
  }

  @AfterAll
  void stop() {
    running.close();
  }

  private static String puncture(String id, String diagnosis, String csf, String serum) {
    return ("{\"workup\":1,\"id\":\"%s\",\"finalDiagnosis\":\"%s\",\"draws\":{"
            + "\"csf\":{\"at\":\"%sT09:00:00Z\"},\"serum\":{\"at\":\"%sT09:10:00Z\"}},\"results\":["
            + "{\"analyte\":\"albumin\",\"in\":\"csf\",\"value\":220,\"unit\":\"mg/L\"}]}")
        .formatted(id, diagnosis, csf, serum);
  }

  private void keep(String workup) {
    HttpResponse<String> taken = clinician.post("/import/take", Map.of("file", workup));
    assertThat(taken.statusCode()).as(taken.body()).isEqualTo(303);
  }

  private String made(Map<String, String> choice) {
    HttpResponse<String> begun = clinician.post("/figures", choice);
    assertThat(Caller.place(begun)).as(begun.body()).isEqualTo("/figures");
    String page = clinician.get("/figures").body();
    while (page.contains("data-renew")) {
      page = clinician.get("/figures").body();
    }
    return page;
  }

  @Test
  void figures_ofAllPunctures_countThemAndNameWhoAsked() {
    Pages pages = Pages.of();
    pages.check("before", clinician.get("/figures").body());

    String page = made(Map.of());

    pages.check("figures", page);
    assertThat(pages.faults()).isEmpty();
    assertThat(page)
        .contains("Cohort of 3 punctures", "of another time 1", "cannot be read 0")
        .contains("migraine &amp; &lt;b&gt;more&lt;/b&gt;");
    assertThat(running.signedIn(Role.AUDITOR).get("/trail").body()).contains("cases-counted");
  }

  @Test
  void figures_ofAMonth_holdOnlyWhatWasDrawnInIt() {
    assertThat(made(Map.of("from", "2034-03", "to", "2034-03"))).contains("Cohort of 1 puncture<");
    assertThat(made(Map.of("from", "2035-01"))).contains("No puncture of this time is kept here");

    HttpResponse<String> wrong = clinician.post("/figures", Map.of("from", "soon"));

    assertThat(wrong.statusCode()).isEqualTo(400);
    assertThat(wrong.body()).contains("A month is written as year and month: 2034-05.");
  }

  @Test
  void groups_thatAPersonNames_giveLimitsOfTheirPeople() {
    String page = made(Map.of("group:migraine", "without", "group:MS", "with"));

    assertThat(page).contains("Limits", "migraine").contains("with the disease");
  }

  @Test
  void tables_ofFiguresThatWereMade_areOneArchive() {
    made(Map.of());

    HttpResponse<String> archive = clinician.post("/figures/tables", Map.of());

    assertThat(archive.headers().firstValue("Content-Disposition").orElse(""))
        .contains("figures-2034-05-09.zip");
    assertThat(archive.body())
        .contains("report.pdf", "report.html", "summary.json")
        .contains("interpretations.csv", "dictionary.csv");
  }
}
