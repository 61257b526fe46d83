package cistern.clinic.door;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A browser without a screen: cookies, forms with their token, no redirects followed. */
final class Caller {

  private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

  private final HttpClient client =
      HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
  private final String base;

  Caller(int port) {
    base = "http://127.0.0.1:" + port;
  }

  HttpResponse<String> get(String path) {
    return send(HttpRequest.newBuilder(URI.create(base + path)).build());
  }

  /** Sends a form with the token of a page that the caller may see. */
  HttpResponse<String> post(String path, Map<String, String> fields) {
    return post(path, fields, token());
  }

  HttpResponse<String> post(String path, Map<String, String> fields, String token) {
    String body =
        fields.entrySet().stream()
            .map(e -> encoded(e.getKey()) + "=" + encoded(e.getValue()))
            .collect(Collectors.joining("&", "_csrf=" + encoded(token) + "&", ""));
    return send(
        HttpRequest.newBuilder(URI.create(base + path))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build());
  }

  /** The token of the caller's session. */
  String token() {
    HttpResponse<String> page = get("/me");
    Matcher matcher =
        TOKEN.matcher(page.statusCode() == 200 ? page.body() : get("/sign-in").body());
    return matcher.find() ? matcher.group(1) : "none";
  }

  /** Comes in by a one-time code. */
  HttpResponse<String> enter(String code) {
    return post("/code", Map.of("code", code));
  }

  /** Where an answer sends its reader. */
  static String place(HttpResponse<String> answer) {
    return answer.headers().firstValue("Location").orElse("");
  }

  private HttpResponse<String> send(HttpRequest request) {
    try {
      return client.send(request, HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
