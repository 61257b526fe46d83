package cistern.clinic.web;

import cistern.clinic.account.Account;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Optional;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;

/** Beginning and ending a session. */
public final class Session {

  private static final String FORM = KeptForm.class.getName();

  private Session() {}

  /** Begins the session of an account, under a new identifier. */
  public static void begin(HttpServletRequest request, Account account) {
    request.getSession(true);
    request.changeSessionId();
    FormTokens.REPOSITORY.renew(request);
    SecurityContext context = SecurityContextHolder.createEmptyContext();
    context.setAuthentication(
        UsernamePasswordAuthenticationToken.authenticated(
            account.id(), account.generation(), List.of()));
    SecurityContextHolder.setContext(context);
    request
        .getSession()
        .setAttribute(HttpSessionSecurityContextRepository.SPRING_SECURITY_CONTEXT_KEY, context);
  }

  /** Leaves a form for the page on which it is filled in again. */
  public static void leave(HttpServletRequest request, KeptForm form) {
    request.getSession().setAttribute(FORM, form);
  }

  /** Takes up the form that was left for a page, once. */
  public static Optional<KeptForm> take(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    if (session != null
        && session.getAttribute(FORM) instanceof KeptForm form
        && form.path().equals(request.getRequestURI())) {
      session.removeAttribute(FORM);
      return Optional.of(form);
    }
    return Optional.empty();
  }

  /** Ends the session. */
  public static void end(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    if (session != null) {
      session.invalidate();
    }
    SecurityContextHolder.clearContext();
  }
}
