package cistern.clinic.launch;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A browser without a screen: cookies, forms with their token, no redirects followed. */
final class Caller {

  private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

  /** What the file is called at its sender's: it may hold a person's name, and is kept nowhere. */
  static final String FILE_NAME = "Surname-of-somebody.png";

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
    return postText(
        path,
        fields.entrySet().stream()
            .map(e -> encoded(e.getKey()) + "=" + encoded(e.getValue()))
            .collect(Collectors.joining("&")),
        token);
  }

  /** Sends fields as a browser writes them; a name may come twice. */
  HttpResponse<String> postText(String path, String fields) {
    return postText(path, fields, token());
  }

  private HttpResponse<String> postText(String path, String fields, String token) {
    String body = "_csrf=" + encoded(token) + "&" + fields;
    return send(
        HttpRequest.newBuilder(URI.create(base + path))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build());
  }

  /** Sends a form whose token is of no session, as a page of an origin does; empty is this one. */
  HttpResponse<String> postFrom(String origin, String path, Map<String, String> fields) {
    String body =
        fields.entrySet().stream()
            .map(e -> encoded(e.getKey()) + "=" + encoded(e.getValue()))
            .collect(Collectors.joining("&", "_csrf=old&", ""));
    return send(
        HttpRequest.newBuilder(URI.create(base + path))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .header("Origin", origin.isEmpty() ? base : origin)
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build());
  }

  /** Sends a form with a file, as a browser does. */
  HttpResponse<String> post(String path, Map<String, String> fields, byte[] file) {
    return post(path, fields, file, token());
  }

  /** Sends a form with a file and any token. */
  HttpResponse<String> post(String path, Map<String, String> fields, byte[] file, String token) {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    Map<String, String> all = new HashMap<>(fields);
    all.put("_csrf", token);
    all.forEach((name, value) -> part(body, "name=\"" + name + "\"", bytes(value)));
    part(body, "name=\"picture\"; filename=\"" + FILE_NAME + "\"", file);
    body.writeBytes(bytes("--cut--\r\n"));
    return send(
        HttpRequest.newBuilder(URI.create(base + path))
            .header("Content-Type", "multipart/form-data; boundary=cut")
            .header("Origin", base)
            .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray()))
            .build());
  }

  private static void part(ByteArrayOutputStream body, String disposition, byte[] content) {
    body.writeBytes(bytes("--cut\r\nContent-Disposition: form-data; " + disposition + "\r\n\r\n"));
    body.writeBytes(content);
    body.writeBytes(bytes("\r\n"));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
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
