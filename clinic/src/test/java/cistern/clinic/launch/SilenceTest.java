package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.read.ListAppender;
import cistern.clinic.account.Role;
import cistern.clinic.store.Engines;
import java.net.http.HttpResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

/** Whatever goes wrong, nothing of a patient stands in a log, an address or a message. */
class SilenceTest {

  /** A value that stands nowhere else. */
  private static final String SECRET = "81.4711";

  private final Running running = Running.on(Engines.folder());
  private final Caller clinician = running.signedIn(Role.CLINICIAN);
  private final ListAppender<ILoggingEvent> log = new ListAppender<>();
  private final Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);

  @BeforeEach
  void listen() {
    log.start();
    root.addAppender(log);
  }

  @AfterEach
  void stop() {
    root.detachAppender(log);
    running.close();
  }

  private String logged() {
    return log.list.stream()
        .map(
            e ->
                e.getFormattedMessage()
                    + (e.getThrowableProxy() == null
                        ? ""
                        : ThrowableProxyUtil.asString(e.getThrowableProxy())))
        .collect(Collectors.joining("\n"));
  }

  @Test
  void fault_whileSaving_saysNothingOfThePatient() {
    String path = Caller.place(clinician.post("/cases", Map.of("name", "case-1")));
    Map<String, String> typed = new HashMap<>(Map.of("base", "1", "person.ageYears", SECRET));
    running.store().change(sql -> sql.sql("alter table case_version rename to elsewhere").update());

    HttpResponse<String> answer = clinician.post(path + "/question", typed);

    assertThat(answer.statusCode()).isEqualTo(500);
    assertThat(answer.body()).contains("Nothing was changed").doesNotContain(SECRET);
    running.store().change(sql -> sql.sql("alter table elsewhere rename to case_version").update());
    running.store().change(sql -> sql.sql("drop table draft").update());
    HttpResponse<String> drafted = clinician.post(path + "/question/look", typed);

    assertThat(drafted.statusCode()).isEqualTo(500);
    assertThat(drafted.body()).doesNotContain(SECRET);
    assertThat(logged()).contains("A fault in the program").doesNotContain(SECRET);
  }

  @Test
  void addresses_andWhatIsRefused_holdNoValue() {
    String path = Caller.place(clinician.post("/cases", Map.of("name", "case-1")));
    for (String place :
        List.of(
            path,
            Caller.place(
                clinician.post(path + "/question", Map.of("base", "1", "person.ageYears", SECRET))),
            Caller.place(
                clinician.post(
                    path + "/paste/take", Map.of("block", "albumin CSF " + SECRET + " mg/L"))),
            Caller.place(running.stranger().get(path + "/question?age=" + SECRET)))) {
      assertThat(place).startsWith("/").doesNotContain(SECRET).doesNotContain("case-1");
    }
    assertThat(clinician.post("/import", Map.of("file", "x".repeat(3_000_000))).statusCode())
        .isBetween(400, 499);
    assertThat(clinician.get(path + "/report/99999999999999999999").statusCode()).isEqualTo(404);
    assertThat(logged()).doesNotContain(SECRET);
  }
}
