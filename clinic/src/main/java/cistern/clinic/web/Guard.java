package cistern.clinic.web;

import cistern.clinic.setting.Setting;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.security.web.context.SecurityContextHolderFilter;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.web.servlet.function.ServerRequest;

/** What every request passes: the session, the token of a form, the routes, the headers. */
public final class Guard {

  /** Nothing but what this program itself serves, and no script or style inside a page. */
  public static final String CONTENT_POLICY =
      "default-src 'none'; style-src 'self'; script-src 'self'; connect-src 'self'; img-src 'self';"
          + " font-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private final Frame frame;
  private final ErrorPages errors;
  private final Routes routes;
  private final boolean isHttpsOnly;
  private final Clock clock;

  private Guard(Frame frame, Routes routes, boolean isHttpsOnly, Clock clock) {
    this.frame = frame;
    this.errors = ErrorPages.of(frame);
    this.routes = routes;
    this.isHttpsOnly = isHttpsOnly;
    this.clock = clock;
  }

  /**
   * The guard of some routes.
   *
   * @param isHttpsOnly whether a server that speaks HTTPS stands before this one, and nobody may
   *     pass by it
   * @param clock by which a session ends
   */
  public static Guard of(Frame frame, Routes routes, boolean isHttpsOnly, Clock clock) {
    return new Guard(frame, routes, isHttpsOnly, clock);
  }

  /** The chain for the security framework. */
  public SecurityFilterChain toChain(HttpSecurity http) {
    return http.authorizeHttpRequests(
            a ->
                a.anyRequest()
                    .access(
                        (who, context) ->
                            isOnItsWay(context.getRequest())
                                ? routes.authorize(who, context)
                                : new AuthorizationDecision(false)))
        .csrf(c -> c.csrfTokenRepository(FormTokens.REPOSITORY))
        .addFilterBefore(SessionLimit.of(clock), SecurityContextHolderFilter.class)
        .addFilterBefore(Safeguard.of(errors), SecurityContextHolderFilter.class)
        .securityContext(
            s -> s.securityContextRepository(new HttpSessionSecurityContextRepository()))
        .headers(
            h ->
                h.contentSecurityPolicy(c -> c.policyDirectives(CONTENT_POLICY))
                    .referrerPolicy(r -> r.policy(ReferrerPolicy.SAME_ORIGIN))
                    .httpStrictTransportSecurity(
                        s ->
                            s.includeSubDomains(false)
                                .maxAgeInSeconds(
                                    Duration.ofDays(Setting.HTTPS_DAYS.number()).toSeconds()))
                    .frameOptions(f -> f.deny()))
        .requestCache(c -> c.disable())
        .logout(l -> l.disable())
        .formLogin(f -> f.disable())
        .httpBasic(b -> b.disable())
        .anonymous(a -> {})
        .exceptionHandling(
            e ->
                e.authenticationEntryPoint((request, response, failure) -> ask(request, response))
                    .accessDeniedHandler(this::refuse))
        .build();
  }

  private boolean isOnItsWay(HttpServletRequest request) {
    return !isHttpsOnly || request.isSecure();
  }

  /** Sends a stranger to sign in, and back to where the stranger wanted to go. */
  private void ask(HttpServletRequest request, HttpServletResponse response) throws IOException {
    if (!isOnItsWay(request)) {
      write(
          request,
          response,
          HttpStatus.FORBIDDEN,
          "This clinic is reached by HTTPS only: ask whoever runs it for its address.");
      return;
    }
    String path = request.getRequestURI();
    boolean isNamed = LocalPath.isOne(path);
    response.setStatus(HttpStatus.SEE_OTHER.value());
    response.setHeader("Location", "/sign-in" + (isNamed ? "?next=" + path : ""));
  }

  private void refuse(
      HttpServletRequest request, HttpServletResponse response, AccessDeniedException failure)
      throws IOException {
    if (isTooLarge(request)) {
      write(request, response, HttpStatus.CONTENT_TOO_LARGE, ErrorPages.TOO_LARGE);
    } else if (failure instanceof CsrfException) {
      ended(request, response);
    } else if (Routes.visitor(request).isEmpty()) {
      Session.end(request);
      ask(request, response);
    } else if (Routes.isForbidden(request)) {
      write(
          request,
          response,
          HttpStatus.FORBIDDEN,
          "Your role does not include this. An administrator decides who may do what.");
    } else {
      write(request, response, HttpStatus.NOT_FOUND, "There is no such page.");
    }
  }

  /** Of what is too large no field is read, and so no token either. */
  private static boolean isTooLarge(HttpServletRequest request) {
    boolean isFile = String.valueOf(request.getContentType()).startsWith("multipart/");
    Setting most = isFile ? Setting.PICTURE_BYTES : Setting.UPLOAD_BYTES;
    return request.getContentLengthLong() > most.number();
  }

  /**
   * The form of a session that has ended, or that another sign-in replaced: what was typed goes
   * with the sign-in, so that a browser without script loses none of it either.
   */
  private void ended(HttpServletRequest request, HttpServletResponse response) throws IOException {
    PageRequest visit = visit(request);
    Optional<KeptForm> kept = KeptForm.of(request);
    boolean isIn = visit.visitor().isPresent();
    if (isIn && kept.filter(KeptForm::isWithFile).isPresent()) {
      Session.leave(request, kept.orElseThrow());
      response.setStatus(HttpStatus.SEE_OTHER.value());
      response.setHeader("Location", kept.orElseThrow().path());
      return;
    }
    Node again =
        isIn
            ? kept.map(k -> k.toSendAgain(visit)).orElseGet(Html::nothing)
            : Fragment.of(SignInForms.password(visit, kept), SignInForms.code(visit, kept));
    write(
        response,
        HttpStatus.FORBIDDEN,
        frame.toHtml(
            visit,
            "Session ended",
            Element.of("h1", "The session has ended"),
            Html.paragraph(
                "This form is of a session that has ended. Nothing was changed yet"
                    + kept.map(Guard::rest).orElse(". Sign in again.")),
            again));
  }

  private static String rest(KeptForm kept) {
    return kept.isWithFile()
        ? ". A file cannot be kept: sign in, and choose it again on the page that follows. What you"
            + " typed beside it is not lost."
        : ", and what you typed is not lost: sign in, and you can send it again.";
  }

  private PageRequest visit(HttpServletRequest request) {
    return new PageRequest(ServerRequest.create(request, List.of()), routes.visitor());
  }

  private void write(
      HttpServletRequest request, HttpServletResponse response, HttpStatus status, String text)
      throws IOException {
    PageRequest visit =
        new PageRequest(ServerRequest.create(request, List.of()), Routes.visitor(request));
    Element back =
        Element.of("p", Html.link("/", "To the start"))
            .withText(" ")
            .with(visit.visitor().isEmpty() ? Html.link("/sign-in", "Sign in") : Html.nothing());
    write(
        response,
        status,
        frame.toHtml(visit, "Not here", Element.of("h1", "Not here"), Html.paragraph(text), back));
  }

  private static void write(HttpServletResponse response, HttpStatus status, String html)
      throws IOException {
    response.setStatus(status.value());
    response.setContentType("text/html;charset=UTF-8");
    response.getOutputStream().write(html.getBytes(StandardCharsets.UTF_8));
  }
}
