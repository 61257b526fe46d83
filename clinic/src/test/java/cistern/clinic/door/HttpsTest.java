package cistern.clinic.door;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.setting.Setting;
import cistern.clinic.store.Engines;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A clinic behind a server that speaks HTTPS, and one that is not told of any. */
class HttpsTest {

  private static final String PROTOCOL = "X-Forwarded-Proto";
  private static final String ADDRESS = "X-Forwarded-For";

  private final HttpClient client = HttpClient.newHttpClient();

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
    try (Running running = Running.behindHttps(Engines.folder())) {
      HttpResponse<String> answer = get(running, PROTOCOL, "https", ADDRESS, "198.51.100.7");

      assertThat(answer.statusCode()).isEqualTo(200);
      assertThat(header(answer, "Set-Cookie")).contains("Secure").contains("HttpOnly");
      // 365 days of 86,400 seconds.
      assertThat(header(answer, "Strict-Transport-Security")).isEqualTo("max-age=31536000");
      for (HttpResponse<String> plain : List.of(get(running), get(running, PROTOCOL, "http"))) {
        assertThat(plain.statusCode()).isEqualTo(403);
        assertThat(plain.body()).contains("by HTTPS only").doesNotContain("type=\"password\"");
      }
    }
  }

  @Test
  void headers_ofAServerThatNobodyNamed_areNotBelieved() {
    try (Running running = Running.on(Engines.folder())) {
      HttpResponse<String> answer = get(running, PROTOCOL, "https");

      assertThat(answer.statusCode()).isEqualTo(200);
      assertThat(header(answer, "Set-Cookie")).doesNotContain("Secure");
      assertThat(header(answer, "Strict-Transport-Security")).isEmpty();
      assertThat(tries(running)).isEqualTo(Setting.SIGN_INS_A_MINUTE.number());
    }
  }

  @Test
  void tries_fromManyAddressesThroughTheOtherServer_areCountedEach() {
    try (Running running = Running.behindHttps(Engines.folder())) {
      assertThat(tries(running)).isGreaterThan(Setting.SIGN_INS_A_MINUTE.number());
    }
  }

  /** How many wrong codes are looked at when each comes as from another address. */
  private int tries(Running running) {
    HttpResponse<String> page = get(running, PROTOCOL, "https");
    String token = page.body().replaceFirst("(?s).*name=\"_csrf\" value=\"([^\"]+)\".*", "$1");
    String cookie = header(page, "Set-Cookie").replaceFirst(";.*", "");
    int most = Setting.SIGN_INS_A_MINUTE.number() + 1;
    for (int i = 0; i < most; i++) {
      HttpRequest.Builder request =
          HttpRequest.newBuilder(
                  URI.create("http://127.0.0.1:" + running.clinic().port() + "/code"))
              .headers(PROTOCOL, "https", ADDRESS, "198.51.100." + i, "Cookie", cookie)
              .header("Content-Type", "application/x-www-form-urlencoded")
              .POST(HttpRequest.BodyPublishers.ofString("code=AAAA&_csrf=" + token));
      if (send(request).statusCode() == 429) {
        return i;
      }
    }
    return most;
  }
}
