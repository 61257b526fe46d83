package cistern.clinic.web;

import cistern.clinic.account.Account;
import cistern.clinic.account.Permission;
import cistern.report.markup.Element;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.Part;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.web.servlet.function.ServerRequest;

/**
 * One request and who makes it.
 *
 * @param request as it came
 * @param visitor who is signed in, if somebody is
 */
public record PageRequest(ServerRequest request, Optional<Account> visitor) {

  /** Who is signed in, on a route that needs somebody. */
  public Account account() {
    return visitor.orElseThrow();
  }

  /** Whether the visitor may do something. */
  public boolean isAllowed(Permission permission) {
    return visitor.filter(a -> a.isAllowed(permission)).isPresent();
  }

  /** A part of the path that the route names. */
  public String path(String name) {
    return plain(request.pathVariable(name));
  }

  /** A part of the path that the route names, as a number; nothing when it is none. */
  public Optional<Long> number(String name) {
    String text = path(name);
    return text.matches("\\d{1,9}") ? Optional.of(Long.valueOf(text)) : Optional.empty();
  }

  /** A field of the form or the address; empty when it was not sent. */
  public String field(String name) {
    return plain(request.param(name).orElse("")).strip();
  }

  /**
   * A text with line breaks as the program writes them, of which browsers send two characters for
   * each; without the sign NUL, which nobody types and a database refuses.
   */
  static String plain(String text) {
    return text.replace("\r\n", "\n").replace('\r', '\n').replace("\0", "");
  }

  /** All fields that were sent, by name, without the token. */
  public Map<String, List<String>> fields() {
    return request.params().entrySet().stream()
        .filter(e -> !e.getKey().equals("_csrf"))
        .collect(
            Collectors.toMap(
                Map.Entry::getKey,
                e -> e.getValue().stream().map(PageRequest::plain).toList(),
                (a, b) -> a,
                TreeMap::new));
  }

  /** A file that was sent with a form; nothing when none was. */
  public Optional<byte[]> file(String name) {
    try {
      Part part = request.servletRequest().getPart(name);
      if (part == null || part.getSize() == 0) {
        return Optional.empty();
      }
      try (InputStream in = part.getInputStream()) {
        return Optional.of(in.readAllBytes());
      }
    } catch (IOException | ServletException e) {
      return Optional.empty();
    }
  }

  /** A form that the program itself made: its token is inside. */
  public Element form(String action) {
    return Element.of("form", token()).with("method", "post").with("action", action);
  }

  /** The token that shows that a form came from a page of this program. */
  private Element token() {
    String value =
        request
            .attribute(CsrfToken.class.getName())
            .map(CsrfToken.class::cast)
            .map(CsrfToken::getToken)
            .orElse("");
    return Html.hidden("_csrf", value);
  }
}
