package cistern.clinic.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.security.web.csrf.CsrfTokenRepository;
import org.springframework.security.web.csrf.HttpSessionCsrfTokenRepository;
import org.springframework.security.web.csrf.XorCsrfTokenRequestAttributeHandler;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/**
 * The tokens of forms. Who is in has one in the session. A stranger has one in a cookie, so that no
 * page that anybody may ask for keeps a session.
 */
final class FormTokens implements CsrfTokenRepository {

  /** The only one; it keeps nothing. */
  static final FormTokens REPOSITORY = new FormTokens();

  private final HttpSessionCsrfTokenRepository sessions = new HttpSessionCsrfTokenRepository();
  private final CookieCsrfTokenRepository cookies = new CookieCsrfTokenRepository();

  private FormTokens() {
    cookies.setCookieName("cistern-form");
    cookies.setCookiePath("/");
    cookies.setCookieCustomizer(c -> c.httpOnly(true).sameSite("Lax"));
  }

  private CsrfTokenRepository of(HttpServletRequest request) {
    return request.getSession(false) == null ? cookies : sessions;
  }

  @Override
  public CsrfToken generateToken(HttpServletRequest request) {
    return sessions.generateToken(request);
  }

  @Override
  public void saveToken(
      @Nullable CsrfToken token, HttpServletRequest request, HttpServletResponse response) {
    of(request).saveToken(token, request, response);
  }

  @Override
  public @Nullable CsrfToken loadToken(HttpServletRequest request) {
    return of(request).loadToken(request);
  }

  /** A new token for a session that has just begun, also for the page that answers now. */
  void renew(HttpServletRequest request) {
    CsrfToken token = generateToken(request);
    if (RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes
        && attributes.getResponse() != null) {
      HttpServletResponse response = attributes.getResponse();
      sessions.saveToken(token, request, response);
      new XorCsrfTokenRequestAttributeHandler().handle(request, response, () -> token);
    }
  }
}
