package cistern.load;

import static io.gatling.javaapi.core.CoreDsl.atOnceUsers;
import static io.gatling.javaapi.core.CoreDsl.css;
import static io.gatling.javaapi.core.CoreDsl.exec;
import static io.gatling.javaapi.core.CoreDsl.form;
import static io.gatling.javaapi.core.CoreDsl.pause;
import static io.gatling.javaapi.core.CoreDsl.percent;
import static io.gatling.javaapi.core.CoreDsl.rampUsers;
import static io.gatling.javaapi.core.CoreDsl.randomSwitch;
import static io.gatling.javaapi.core.CoreDsl.regex;
import static io.gatling.javaapi.core.CoreDsl.responseTimeInMillis;
import static io.gatling.javaapi.core.CoreDsl.scenario;
import static io.gatling.javaapi.http.HttpDsl.http;
import static io.gatling.javaapi.http.HttpDsl.status;

import io.gatling.javaapi.core.ChainBuilder;
import io.gatling.javaapi.core.ScenarioBuilder;
import io.gatling.javaapi.core.Session;
import io.gatling.javaapi.core.Simulation;
import io.gatling.javaapi.http.HttpProtocolBuilder;
import io.gatling.javaapi.http.HttpRequestActionBuilder;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.ThreadLocalRandom;
import org.HdrHistogram.ConcurrentHistogram;

/**
 * Fifty people at the clinic at once, one second between two requests of each, a minute long: the
 * day, pages of cases, searches and saved values. Beside them one reads an empty page of the same
 * server. Only ever at this machine.
 */
public final class FiftyPeople extends Simulation {

  private static final int PEOPLE = Integer.getInteger("people", 50);
  private static final Duration PAUSE = Duration.ofSeconds(1);
  private static final Duration LENGTH = Duration.ofSeconds(Integer.getInteger("seconds", 60));

  /** Slower than the limit on signing in from one address. */
  private static final Duration SIGNING_IN = Duration.ofMillis(2200L * PEOPLE);

  private static final List<String> SOUGHT = List.of("optic neuritis", "M 1", "bands", "2026");

  private static final Map<String, ConcurrentHistogram> TIMES = new ConcurrentSkipListMap<>();

  private final HttpProtocolBuilder clinic =
      http.baseUrl("http://127.0.0.1:" + Integer.getInteger("port", 8199))
          .header("Origin", "http://127.0.0.1:" + Integer.getInteger("port", 8199))
          .acceptEncodingHeader("gzip")
          .disableCaching();

  /** The request with its time noted, where it was answered; a refused save stands by itself. */
  private static ChainBuilder timed(String what, HttpRequestActionBuilder request) {
    return exec(session -> session.removeAll("ms", "answer"))
        .exec(
            request.check(status().saveAs("answer")).check(responseTimeInMillis().saveAs("ms")))
        .exec(
            session -> {
              if (session.contains("ms")) {
                boolean isRefused = session.getInt("answer") == 409;
                TIMES.computeIfAbsent(
                        isRefused ? what + ", refused" : what, w -> new ConcurrentHistogram(3))
                    .recordValue(session.getInt("ms"));
              }
              return session;
            });
  }

  private static ChainBuilder day() {
    return timed(
        "the day",
        http("the day")
            .get("/day")
            .check(status().is(200))
            .check(regex("name=\"_csrf\" value=\"([^\"]+)\"").saveAs("token"))
            .check(regex("/cases/([0-9a-f-]{36})").findAll().saveAs("cases")));
  }

  private static ChainBuilder page() {
    return timed(
        "a case",
        http("a case")
            .get(FiftyPeople::anyCase)
            .check(status().is(200))
            .check(form("form[action$='/results']").optional().saveAs("form"))
            .check(css("form[action$='/results']", "action").optional().saveAs("action")));
  }

  private static String anyCase(Session session) {
    List<String> cases = session.getList("cases");
    return "/cases/" + cases.get(ThreadLocalRandom.current().nextInt(cases.size()));
  }

  private static ChainBuilder search() {
    return timed(
        "a search",
        http("a search")
            .post("/cases/find")
            .formParam("_csrf", "#{token}")
            .formParam("text", session -> SOUGHT.get(ThreadLocalRandom.current().nextInt(SOUGHT.size())))
            .check(status().is(200)));
  }

  private static ChainBuilder save() {
    return page()
        .pause(PAUSE)
        .doIf(session -> session.contains("form"))
        .then(
            timed(
                "a save",
                http("a save")
                    .post("#{action}")
                    .disableFollowRedirect()
                    .form("#{form}")
                    .formParam("csf.leukocytes", session -> "" + ThreadLocalRandom.current().nextInt(1, 40))
                    .check(status().in(302, 303, 409))));
  }

  private static ChainBuilder signIn() {
    return exec(
        http("sign-in page").get("/sign-in").check(regex("name=\"_csrf\" value=\"([^\"]+)\"").saveAs("token")),
        http("signing in")
            .post("/sign-in")
            .formParam("_csrf", "#{token}")
            .formParam("next", "")
            .formParam("name", "invented-clinician")
            .formParam("password", System.getProperty("password"))
            .check(status().is(200)));
  }

  private static ScenarioBuilder people() {
    return scenario("people")
        .exec(signIn(), day())
        .rendezVous(PEOPLE)
        .pause(Duration.ZERO, PAUSE)
        .during(LENGTH)
        .on(
            randomSwitch()
                .on(
                    percent(35).then(day()),
                    percent(30).then(page()),
                    percent(15).then(search()),
                    percent(20).then(save())),
            pause(PAUSE));
  }

  private static ScenarioBuilder nobody() {
    return scenario("an empty page")
        .pause(SIGNING_IN)
        .during(LENGTH)
        .on(
            timed("an empty page", http("an empty page").get("/icon.svg").check(status().is(200)))
                .pause(PAUSE));
  }

  @Override
  public void after() {
    ConcurrentHistogram all = new ConcurrentHistogram(3);
    TIMES.forEach(
        (what, times) -> {
          print(what, times);
          if (!what.equals("an empty page")) {
            all.add(times);
          }
        });
    print("all but the empty page", all);
  }

  private static void print(String what, ConcurrentHistogram times) {
    System.out.printf(
        "%-24s %6d requests, ms: p50 %5d  p95 %5d  p99 %5d  most %5d%n",
        what,
        times.getTotalCount(),
        times.getValueAtPercentile(50),
        times.getValueAtPercentile(95),
        times.getValueAtPercentile(99),
        times.getMaxValue());
  }

  {
    setUp(
            people().injectOpen(rampUsers(PEOPLE).during(SIGNING_IN)),
            nobody().injectOpen(atOnceUsers(1)))
        .protocols(clinic);
  }
}
