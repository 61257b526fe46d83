package cistern.clinic.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.converter.StringHttpMessageConverter;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.function.ServerRequest;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * What fails before a screen is reached, such as a database that is away when somebody is looked
 * up: it becomes the same page as a failure behind a screen. Whoever wanted to leave has left.
 */
final class Safeguard extends OncePerRequestFilter {

  private static final String LEAVING = "/sign-out";

  private final ErrorPages errors;

  private Safeguard(ErrorPages errors) {
    this.errors = errors;
  }

  static Safeguard of(ErrorPages errors) {
    return new Safeguard(errors);
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    try {
      chain.doFilter(request, response);
    } catch (RuntimeException | ServletException failure) {
      if (response.isCommitted()) {
        throw failure;
      }
      if (request.getMethod().equals("POST") && request.getRequestURI().equals(LEAVING)) {
        Session.end(request);
      }
      write(request, response, failure);
    }
  }

  private void write(HttpServletRequest request, HttpServletResponse response, Exception failure)
      throws ServletException, IOException {
    ServerRequest asked = ServerRequest.create(request, List.of());
    PageRequest visit = new PageRequest(asked, Optional.empty());
    ServerResponse page =
        failure instanceof InvalidParameterException wrong
            ? errors.unreadable(visit, HttpStatusCode.valueOf(wrong.getErrorCode()))
            : errors.answer(visit, failure);
    page.writeTo(request, response, () -> List.of(new StringHttpMessageConverter()));
  }
}
