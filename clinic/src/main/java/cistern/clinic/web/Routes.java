package cistern.clinic.web;

import cistern.clinic.account.Account;
import cistern.clinic.account.Accounts;
import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.store.Store;
import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpMethod;
import org.springframework.http.server.PathContainer;
import org.springframework.security.authentication.AnonymousAuthenticationToken;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.authorization.AuthorizationManager;
import org.springframework.security.authorization.AuthorizationResult;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.access.intercept.RequestAuthorizationContext;
import org.springframework.web.servlet.function.RequestPredicates;
import org.springframework.web.servlet.function.RouterFunction;
import org.springframework.web.servlet.function.RouterFunctions;
import org.springframework.web.servlet.function.ServerRequest;
import org.springframework.web.servlet.function.ServerResponse;
import org.springframework.web.util.pattern.PathPattern;
import org.springframework.web.util.pattern.PathPatternParser;

/** All routes: what may be asked, by whom, and what answers. What is not here is refused. */
public final class Routes implements AuthorizationManager<RequestAuthorizationContext> {

  private static final String VISITOR = Routes.class.getName();
  private static final String FORBIDDEN = Routes.class.getName() + ".forbidden";

  private final List<Route> routes;
  private final List<Known> known;
  private final Accounts accounts;
  private final Store store;
  private final AuditTrail trail;

  private Routes(List<Route> routes, Accounts accounts, Store store, AuditTrail trail) {
    this.routes = List.copyOf(routes);
    this.known = routes.stream().map(Known::of).toList();
    this.accounts = accounts;
    this.store = store;
    this.trail = trail;
  }

  /** A route with its path as it is held against a request. */
  private record Known(Route route, PathPattern path) {
    static Known of(Route route) {
      return new Known(route, PathPatternParser.defaultInstance.parse(route.path()));
    }

    boolean isAskedFor(HttpMethod method, PathContainer asked) {
      return route.method().equals(method) && path.matches(asked);
    }
  }

  /** The routes of the application. */
  public static Routes of(List<Route> routes, Accounts accounts, Store store, AuditTrail trail) {
    return new Routes(routes, accounts, store, trail);
  }

  /** Every route. */
  public List<Route> all() {
    return routes;
  }

  @Override
  public AuthorizationResult authorize(
      Supplier<? extends @Nullable Authentication> authentication,
      RequestAuthorizationContext context) {
    HttpServletRequest request = context.getRequest();
    Optional<Route> route = find(request);
    Optional<Account> visitor = visitor(authentication.get());
    visitor.ifPresent(v -> request.setAttribute(VISITOR, v));
    boolean isGranted = route.filter(r -> isGranted(r.access(), visitor)).isPresent();
    if (!isGranted && route.isPresent() && visitor.isPresent()) {
      request.setAttribute(FORBIDDEN, true);
      String who = visitor.get().id();
      store.change(sql -> trail.append(sql, Note.of(who, Action.DOOR_REFUSED, "")));
    }
    return new AuthorizationDecision(isGranted);
  }

  /** Whether a refused request was for a route that others may use. */
  static boolean isForbidden(HttpServletRequest request) {
    return request.getAttribute(FORBIDDEN) != null;
  }

  /** Who made a request. */
  static Optional<Account> visitor(HttpServletRequest request) {
    return Optional.ofNullable((Account) request.getAttribute(VISITOR));
  }

  private Optional<Route> find(HttpServletRequest request) {
    HttpMethod method = HttpMethod.valueOf(request.getMethod());
    PathContainer path = PathContainer.parsePath(request.getRequestURI());
    return known.stream().filter(k -> k.isAskedFor(method, path)).map(Known::route).findFirst();
  }

  /** Who is signed in, before a request was held against the routes. */
  Optional<Account> visitor() {
    return visitor(SecurityContextHolder.getContext().getAuthentication());
  }

  /**
   * The account behind a session, as it is now: a closed one is nobody, and so is one whose
   * password was changed since elsewhere.
   */
  private Optional<Account> visitor(@Nullable Authentication authentication) {
    if (authentication == null || authentication instanceof AnonymousAuthenticationToken) {
      return Optional.empty();
    }
    return accounts
        .find(authentication.getName())
        .filter(a -> Long.valueOf(a.generation()).equals(authentication.getCredentials()));
  }

  private static boolean isGranted(Access access, Optional<Account> visitor) {
    return switch (access) {
      case Access.Everybody everybody -> true;
      case Access.Needs needs -> visitor.filter(a -> a.isAllowed(needs.permission())).isPresent();
    };
  }

  /** The routes for the web framework; a failure becomes a page without any value of a patient. */
  public RouterFunction<ServerResponse> toFunction(ErrorPages troubles) {
    RouterFunctions.Builder builder = RouterFunctions.route();
    for (Route route : routes) {
      builder.route(
          RequestPredicates.method(route.method()).and(RequestPredicates.path(route.path())),
          request -> route.screen().answer(visit(request)));
    }
    return builder
        .onError(Throwable.class, (failure, request) -> troubles.answer(visit(request), failure))
        .build();
  }

  private static PageRequest visit(ServerRequest request) {
    return new PageRequest(request, visitor(request.servletRequest()));
  }
}
