package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import cistern.clinic.setting.Setting;
import cistern.clinic.store.Engines;
import cistern.clinic.web.Network;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A clinic behind a server that speaks HTTPS, and one that is not told of any. */
@TestInstance(Lifecycle.PER_CLASS)
class HttpsTest {

  private static final String PROTOCOL = "X-Forwarded-Proto";
  private static final String ADDRESS = "X-Forwarded-For";
  private static final int MOST = Setting.SIGN_INS_A_MINUTE.number();

  private final HttpClient client = HttpClient.newHttpClient();
  private final Running behind = Running.behindHttps(Engines.folder());

  /** Tries are counted by the minute. */
  @BeforeEach
  void aMinuteLater() {
    behind.pass(Duration.ofMinutes(1));
  }

  @AfterAll
  void stop() {
    behind.close();
  }

  private HttpResponse<String> get(Running running, String... headers) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(
            URI.create("http://127.0.0.1:" + running.clinic().port() + "/sign-in"));
    return send(headers.length == 0 ? request : request.headers(headers));
  }

  private HttpResponse<String> send(HttpRequest.Builder request) {
    try {
      return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String header(HttpResponse<String> answer, String name) {
    return answer.headers().firstValue(name).orElse("");
  }

  @Test
  void request_byHttpsThroughTheOtherServer_getsACookieForHttpsOnly() {
    HttpResponse<String> answer = get(behind, PROTOCOL, "https", ADDRESS, "198.51.100.7");

    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(header(answer, "Set-Cookie")).contains("Secure").contains("HttpOnly");
    // 365 days of 86,400 seconds.
    assertThat(header(answer, "Strict-Transport-Security")).isEqualTo("max-age=31536000");
    for (HttpResponse<String> plain : List.of(get(behind), get(behind, PROTOCOL, "http"))) {
      assertThat(plain.statusCode()).isEqualTo(403);
      assertThat(plain.body()).contains("by HTTPS only").doesNotContain("type=\"password\"");
    }
  }

  @Test
  void headers_ofAServerThatNobodyNamed_areNotBelieved() {
    try (Running running = Running.on(Engines.folder())) {
      HttpResponse<String> answer = get(running, PROTOCOL, "https");

      assertThat(answer.statusCode()).isEqualTo(200);
      assertThat(header(answer, "Set-Cookie")).doesNotContain("Secure");
      assertThat(header(answer, "Strict-Transport-Security")).isEmpty();
      assertThat(tries(running, i -> "198.51.100." + i)).isEqualTo(MOST);
    }
  }

  @Test
  void tries_fromManyAddressesThroughTheOtherServer_areCountedEach() {
    assertThat(tries(behind, i -> "198.51.100." + i)).isEqualTo(MOST + 1);
    assertThat(tries(behind, i -> "198.51.101." + i + ":4711")).isEqualTo(MOST + 1);
    assertThat(tries(behind, i -> "[2001:db8:1:" + i + "::1]:443")).isEqualTo(MOST + 1);
  }

  /** Only what the other server wrote itself, the last, tells who calls: on any network. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "203.0.113.%d, 198.51.100.7",
        "203.0.113.%d, 10.1.2.3",
        "203.0.113.%d,, 127.0.0.1",
        "10.0.0.%d, 192.168.1.4:5%1$d",
        "203.0.113.%d, [2001:db8:1:2::%1$d]:443",
        "2001:db8:1:2:%d::1",
        "203.0.113.%d, unknown"
      })
  void tries_withForgedAddressesBeforeTheirOwn_areCountedAsOneCallersAndNoOthers(String header) {
    assertThat(tries(behind, header::formatted)).isEqualTo(MOST);
    assertThat(statuses(behind, i -> "198.51.100.8", 1)).containsExactly(401);
    assertThat(statuses(behind, i -> "203.0.113.1", 1)).containsExactly(401);
  }

  @Test
  void tries_throughTwoServersThatAreNamed_areCountedByTheirCaller() {
    try (Running running = Running.behindHttps(Engines.folder(), "127.0.0.1", "203.0.113.0/24")) {
      assertThat(tries(running, i -> "198.51.100." + i + ", 203.0.113.9")).isEqualTo(MOST + 1);
      assertThat(tries(running, i -> "10.0.0." + i + ", 198.51.100.99, 203.0.113.9"))
          .isEqualTo(MOST);
    }
  }

  @Test
  void headers_ofAMachineThatIsNotTheNamedServer_areNotBelieved() {
    try (Running running = Running.behindHttps(Engines.folder(), "203.0.113.9")) {
      assertThat(get(running, PROTOCOL, "https", ADDRESS, "198.51.100.7").statusCode())
          .isEqualTo(403);
    }
    assertThat(get(behind, PROTOCOL, "https, http").statusCode()).isEqualTo(403);
    assertThat(get(behind, PROTOCOL, "http, HTTPS").statusCode()).isEqualTo(200);
  }

  @Test
  void network_isReadFromAnAddressWithItsBits() {
    assertThat(Network.parse("10.0.0.0/8").bits()).isEqualTo(8);
    assertThat(Network.parse("2001:db8::1").bits()).isEqualTo(128);
    for (String wrong : List.of("", "proxy.example", "10.0.0.0/33", "10.0.0.0/x", "/8")) {
      assertThatThrownBy(() -> Network.parse(wrong))
          .as(wrong)
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  /** How many wrong codes are looked at, one after the other, before one is not. */
  private int tries(Running running, IntFunction<String> address) {
    return statuses(running, address, MOST + 1).stream().takeWhile(s -> s == 401).toList().size();
  }

  private List<Integer> statuses(Running running, IntFunction<String> address, int count) {
    HttpResponse<String> page = get(running, PROTOCOL, "https");
    String token = page.body().replaceFirst("(?s).*name=\"_csrf\" value=\"([^\"]+)\".*", "$1");
    String cookie = header(page, "Set-Cookie").replaceFirst(";.*", "");
    List<Integer> statuses = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      HttpRequest.Builder request =
          HttpRequest.newBuilder(
                  URI.create("http://127.0.0.1:" + running.clinic().port() + "/code"))
              .headers(PROTOCOL, "https", ADDRESS, address.apply(i), "Cookie", cookie)
              .header("Content-Type", "application/x-www-form-urlencoded")
              .POST(HttpRequest.BodyPublishers.ofString("code=AAAA&_csrf=" + token));
      statuses.add(send(request).statusCode());
    }
    return statuses;
  }
}
