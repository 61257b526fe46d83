package cistern.clinic.web;

import cistern.clinic.setting.Setting;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Ends a session that has lived for a whole shift, however busy it is. One without requests is
 * ended by the server itself.
 */
final class SessionLimit extends OncePerRequestFilter {

  private static final String BEGUN = SessionLimit.class.getName();

  private final Clock clock;

  private SessionLimit(Clock clock) {
    this.clock = clock;
  }

  static SessionLimit of(Clock clock) {
    return new SessionLimit(clock);
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    HttpSession before = request.getSession(false);
    if (before != null && before.getAttribute(BEGUN) instanceof Instant begun && isLongAgo(begun)) {
      before.invalidate();
    }
    chain.doFilter(request, response);
    HttpSession after = request.getSession(false);
    if (after != null && after.getAttribute(BEGUN) == null) {
      after.setAttribute(BEGUN, clock.instant());
    }
  }

  private boolean isLongAgo(Instant begun) {
    Duration limit = Duration.ofHours(Setting.SESSION_HOURS.number());
    return Duration.between(begun, clock.instant()).compareTo(limit) >= 0;
  }
}
