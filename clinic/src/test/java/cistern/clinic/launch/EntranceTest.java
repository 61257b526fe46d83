package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Account;
import cistern.clinic.account.AccountOutcome;
import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.account.Role;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Engines;
import cistern.clinic.store.Location;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** Coming in, staying in, going out. */
@TestInstance(Lifecycle.PER_CLASS)
class EntranceTest {

  private static final String PASSWORD = "an invented sentence";
  private static final Pattern CODE = Pattern.compile("class=\"code\">([A-Z0-9-]+)<");

  private final Location location = Engines.folder();
  private final Running running = Running.on(location);

  /** Tries are counted by the minute. */
  @BeforeEach
  void aMinuteLater() {
    running.pass(Duration.ofMinutes(1));
  }

  @AfterAll
  void stop() {
    running.close();
  }

  @Test
  void first_administrator_makesAccountsWhoseCodesLetInOnce() {
    try (Running empty = Running.on(Engines.folder())) {
      first(empty);
    }
  }

  private void first(Running empty) {
    String code = empty.clinic().codes().makeFirst();
    Caller chief = empty.stranger();

    assertThat(chief.get("/sign-in").body()).contains("The first administrator");
    assertThat(chief.post("/first", first("WRONG")).statusCode()).isEqualTo(401);
    assertThat(Caller.place(chief.post("/first", first(code)))).isEqualTo("/accounts");
    HttpResponse<String> made =
        chief.post(
            "/accounts", Map.of("name", "n.berg", "fullName", "Nurse Berg", "role", "nurse"));
    String invitation = code(made);
    Caller nurse = empty.stranger();
    assertThat(Caller.place(nurse.enter(invitation))).isEqualTo("/day");
    assertThat(nurse.get("/day").body()).contains("Nothing waits.");
    assertThat(nurse.get("/cases").body()).contains("No case.");
    assertThat(empty.stranger().enter(invitation).statusCode()).isEqualTo(401);
    assertThat(Caller.place(nurse.post("/me", Map.of("password", PASSWORD)))).isEqualTo("/");
    assertThat(nurse.post("/me", Map.of("password", "short")).body()).contains("too short");
    assertThat(signIn(empty.stranger(), "n.berg", PASSWORD).statusCode()).isEqualTo(303);
    assertThat(signIn(empty.stranger(), "n.berg", "wrong").statusCode()).isEqualTo(401);
  }

  @Test
  void accounts_askedForWrongly_sayWhy() {
    Caller chief = running.signedIn(Role.ADMINISTRATOR);
    String own = running.person(Role.ADMINISTRATOR).id();
    String nurse = closable("closable-1");

    assertThat(
            chief
                .post("/accounts", Map.of("name", "x.y", "fullName", "X Y", "role", "king"))
                .body())
        .contains("Choose one of the roles");
    assertThat(
            chief.post("/accounts", Map.of("name", "X", "fullName", "X Y", "role", "nurse")).body())
        .contains("2 to 40 small letters");
    assertThat(chief.post("/accounts/" + own + "/close", Map.of()).body())
        .contains("your own account");
    assertThat(Caller.place(chief.post("/accounts/" + nurse + "/close", Map.of())))
        .isEqualTo("/accounts");
    assertThat(chief.post("/accounts/" + nurse + "/code", Map.of()).statusCode()).isEqualTo(404);
    assertThat(chief.get("/accounts").body()).contains("closed");
  }

  @Test
  void closedAccount_inASessionThatIsOpen_isOutAtOnce() {
    String id = closable("closable-2");
    Account account = running.clinic().accounts().find(id).orElseThrow();
    Caller nurse = running.stranger();
    nurse.enter(running.clinic().codes().make(account, ""));
    assertThat(nurse.get("/me").statusCode()).isEqualTo(200);

    running.clinic().accounts().close(id, "the test itself");

    assertThat(Caller.place(nurse.get("/me"))).startsWith("/sign-in");
  }

  @Test
  void form_withoutTheTokenOfItsSession_changesNothing() {
    Caller chief = running.signedIn(Role.ADMINISTRATOR);
    Map<String, String> fields = Map.of("name", "x.y", "fullName", "X Y", "role", "nurse");

    assertThat(chief.post("/accounts", fields, "none").statusCode()).isEqualTo(403);
    assertThat(chief.post("/accounts", fields, running.stranger().token()).statusCode())
        .isEqualTo(403);
    assertThat(running.clinic().accounts().all()).noneMatch(a -> a.name().equals("x.y"));
  }

  /** Another site's form is not sent again for it, and no password is carried. */
  @Test
  void form_ofASessionThatEnded_isCarriedOnlyFromAPageOfThisAddress() {
    Caller nurse = running.signedIn(Role.NURSE);
    Map<String, String> fields = Map.of("typed", "word-1", "password", "word-2");

    assertThat(nurse.postFrom("", "/me", fields).body())
        .contains("word-1")
        .contains("Send it now")
        .doesNotContain("word-2");
    assertThat(nurse.postFrom("http://elsewhere.example", "/me", fields).body())
        .contains("session that has ended")
        .doesNotContain("word-1");
    assertThat(running.stranger().postFrom("", "/me", fields).body())
        .contains("kept.typed")
        .doesNotContain("word-2");
  }

  @Test
  void session_isRenewedAtSignInAndEndsAtSignOut() {
    Caller caller = running.stranger();
    String before = cookie(caller.get("/sign-in"));
    HttpResponse<String> entered =
        caller.enter(running.clinic().codes().make(account("renewed"), ""));

    assertThat(before).contains("HttpOnly").contains("SameSite=Lax");
    assertThat(cookie(entered)).isNotEmpty().isNotEqualTo(before);
    assertThat(caller.get("/sign-in?next=/me").statusCode()).isEqualTo(303);
    assertThat(Caller.place(caller.post("/sign-out", Map.of()))).isEqualTo("/sign-in");
    assertThat(Caller.place(caller.get("/me"))).isEqualTo("/sign-in?next=/me");
  }

  @Test
  void signIn_sentElsewhere_staysInThisProgram() {
    String code = running.clinic().codes().make(account("elsewhere"), "");

    HttpResponse<String> answer =
        running.stranger().post("/code", Map.of("code", code, "next", "//elsewhere.example/x"));

    assertThat(Caller.place(answer)).isEqualTo("/day");
  }

  @Test
  void session_afterAWholeShift_hasEndedHoweverBusy() {
    Caller nurse = running.signedIn(Role.NURSE);
    for (int hour = 1; hour < Setting.SESSION_HOURS.number(); hour++) {
      running.pass(Duration.ofHours(1));
      assertThat(nurse.get("/me").statusCode()).isEqualTo(200);
    }
    running.pass(Duration.ofHours(1));
    assertThat(Caller.place(nurse.get("/me"))).isEqualTo("/sign-in?next=/me");
  }

  @Test
  void stranger_askingForPages_getsNoSession() {
    for (String path : java.util.List.of("/sign-in", "/", "/day", "/look.css", "/none")) {
      assertThat(running.stranger().get(path).headers().allValues("Set-Cookie"))
          .as(path)
          .noneMatch(c -> c.startsWith("cistern="));
    }
  }

  @Test
  void password_changed_endsTheOtherSessionsOnly() {
    String id = closable("changes-it");
    Account account = running.clinic().accounts().find(id).orElseThrow();
    Caller here = running.stranger();
    here.enter(running.clinic().codes().make(account, ""));
    assertThat(Caller.place(here.post("/me", Map.of("password", PASSWORD)))).isEqualTo("/");
    Caller there = running.stranger();
    signIn(there, "changes-it", PASSWORD);
    assertThat(there.get("/me").statusCode()).isEqualTo(200);
    Map<String, String> wrong = Map.of("current", "no", "password", "another sentence");
    assertThat(here.post("/me", wrong).body()).contains("The password until now is another one");

    Map<String, String> right = Map.of("current", PASSWORD, "password", "another sentence");
    assertThat(Caller.place(here.post("/me", right))).isEqualTo("/");

    assertThat(here.get("/me").statusCode()).isEqualTo(200);
    assertThat(Caller.place(there.get("/me"))).startsWith("/sign-in");
    running.clinic().codes().make(account, "the test itself");
    assertThat(Caller.place(here.get("/me"))).startsWith("/sign-in");
  }

  @Test
  void addressOrForm_ofAnyLength_isAnsweredWithoutAFault() {
    String deep = "/a".repeat(200_000);
    Caller stranger = running.stranger();
    Account own = running.clinic().accounts().find(closable("goes-deep")).orElseThrow();
    String code = running.clinic().codes().make(own, "");

    assertThat(stranger.post("/code", Map.of("code", "A", "kept-path", deep)).statusCode())
        .isEqualTo(401);
    assertThat(Caller.place(stranger.post("/code", Map.of("code", code, "next", deep))))
        .isEqualTo("/day");
    assertThat(
            running
                .signedIn(Role.ADMINISTRATOR)
                .post("/accounts", Map.of("name", "a\0b", "fullName", "\0", "role", "nurse"))
                .statusCode())
        .isEqualTo(400);
    Caller clinician = running.signedIn(Role.CLINICIAN);
    assertThat(clinician.get("/cases/%00").statusCode()).isIn(400, 404);
    assertThat(
            clinician.post("/cases/find", Map.of("text", "\0" + "x".repeat(50_000))).statusCode())
        .isEqualTo(200);
  }

  @Test
  void styleAndScript_areKeptByABrowserUntilTheyChange() {
    Matcher style =
        Pattern.compile("href=\"(/look[.]css[?][0-9a-f]+)\"")
            .matcher(running.stranger().get("/sign-in").body());
    assertThat(style.find()).isTrue();
    assertThat(
            running.stranger().get(style.group(1)).headers().firstValue("Cache-Control").orElse(""))
        .contains("max-age=31536000");
  }

  @Test
  void tries_tooManyInAMinute_areNotLookedAt() {
    running.person(Role.NURSE);
    Caller caller = running.stranger();
    String token = caller.token();
    Map<String, String> fields = Map.of("code", "AAAA-AAAA-AAAA-AAAA");
    for (int i = 0; i < Setting.SIGN_INS_A_MINUTE.number(); i++) {
      assertThat(caller.post("/code", fields, token).statusCode()).isEqualTo(401);
    }

    assertThat(caller.post("/code", fields, token).statusCode()).isEqualTo(429);
    assertThat(caller.post("/sign-in", Map.of(), token).statusCode()).isEqualTo(429);
    assertThat(caller.post("/first", Map.of(), token).statusCode()).isEqualTo(429);
    running.pass(Duration.ofMinutes(1));
    assertThat(caller.post("/code", fields, token).statusCode()).isEqualTo(401);
  }

  @Test
  void headers_ofEveryAnswer_forbidKeepingAndFraming() {
    Caller nurse = running.signedIn(Role.NURSE);
    for (HttpResponse<String> answer : java.util.List.of(nurse.get("/me"), nurse.get("/trail"))) {
      assertThat(answer.headers().firstValue("Cache-Control").orElse("")).contains("no-store");
      assertThat(answer.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
      assertThat(answer.headers().firstValue("X-Frame-Options")).contains("DENY");
      assertThat(answer.headers().firstValue("Content-Security-Policy").orElse(""))
          .contains("default-src 'none'")
          .contains("frame-ancestors 'none'")
          .doesNotContain("unsafe");
      assertThat(answer.body()).doesNotContain("<script>").doesNotContain(" style=\"");
    }
  }

  /** Browsers ask for an icon with every visit: none of their questions goes wrong. */
  @Test
  void icon_ofEveryPage_isADrawingOfOurOwnUnderThePolicy() {
    Caller stranger = running.stranger();
    assertThat(stranger.get("/sign-in").body())
        .contains("<link rel=\"icon\" type=\"image/svg+xml\" href=\"/icon.svg\"/>");

    HttpResponse<String> icon = stranger.get("/icon.svg");

    assertThat(icon.statusCode()).isEqualTo(200);
    assertThat(icon.headers().firstValue("Content-Type").orElse("")).startsWith("image/svg+xml");
    assertThat(icon.headers().firstValue("Content-Security-Policy").orElse(""))
        .contains("img-src 'self'");
    assertThat(icon.body()).startsWith("<svg ").doesNotContain("<style").doesNotContain("<script");
    assertThat(stranger.get("/favicon.ico").statusCode()).isEqualTo(204);
  }

  @Test
  void trail_checkedByAnAuditor_isWhole() {
    try (Running other = Running.on(Engines.folder())) {
      trail(other);
    }
  }

  private static void trail(Running other) {
    Caller auditor = other.signedIn(Role.AUDITOR);
    other.signedIn(Role.NURSE).get("/trail");

    assertThat(auditor.get("/trail").body())
        .contains("door-refused")
        .contains("Invented nurse")
        .contains("the program");
    assertThat(auditor.post("/trail", Map.of()).body()).contains("is whole");
    other
        .store()
        .change(
            sql -> {
              sql.sql("drop trigger audit_no_update").update();
              return sql.sql("update audit set action = 'x' where number = 1").update();
            });
    assertThat(auditor.post("/trail", Map.of()).body()).contains("entry 1 is not as it was");
  }

  @Test
  void start_ofEveryRole_isAPlaceThatTheRoleMaySee() {
    for (Role role : Role.values()) {
      Caller caller = running.signedIn(role);
      String place = Caller.place(caller.get("/"));
      assertThat(caller.get(place).statusCode()).as(role.word()).isEqualTo(200);
      assertThat(caller.get(place).body()).contains("aria-current");
    }
    assertThat(Caller.place(running.stranger().get("/"))).isEqualTo("/sign-in");
  }

  private Account account(String name) {
    return running.clinic().accounts().find(closable(name)).orElseThrow();
  }

  /** An account that a test closes. */
  private String closable(String name) {
    return switch (running
        .clinic()
        .accounts()
        .add(new Newcomer(name, "Invented nurse", Role.NURSE), "")) {
      case AccountOutcome.Done<Account> done -> done.value().id();
      case AccountOutcome.NotDone<Account> not -> throw new AssertionError(not.reason());
    };
  }

  private static Map<String, String> first(String code) {
    return Map.of("code", code, "name", "Chief", "fullName", "Dr Invented", "password", PASSWORD);
  }

  private static String code(HttpResponse<String> page) {
    Matcher matcher = CODE.matcher(page.body());
    return matcher.find() ? matcher.group(1) : "";
  }

  private static String cookie(HttpResponse<String> answer) {
    return answer.headers().firstValue("Set-Cookie").orElse("");
  }

  private static HttpResponse<String> signIn(Caller caller, String name, String password) {
    return caller.post("/sign-in", Map.of("name", name, "password", password));
  }
}
