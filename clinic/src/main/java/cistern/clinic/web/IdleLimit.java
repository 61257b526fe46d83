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

/** Ends a session of which no request came for too long, before anything is read of it. */
final class IdleLimit extends OncePerRequestFilter {

  private static final String LAST = IdleLimit.class.getName();

  private final Clock clock;

  private IdleLimit(Clock clock) {
    this.clock = clock;
  }

  static IdleLimit of(Clock clock) {
    return new IdleLimit(clock);
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    HttpSession session = request.getSession(false);
    if (session != null) {
      if (session.getAttribute(LAST) instanceof Instant last && isLongAgo(last)) {
        session.invalidate();
      } else {
        session.setAttribute(LAST, clock.instant());
      }
    }
    chain.doFilter(request, response);
  }

  private boolean isLongAgo(Instant last) {
    Duration limit = Duration.ofMinutes(Setting.SESSION_MINUTES.number());
    return Duration.between(last, clock.instant()).compareTo(limit) >= 0;
  }
}
