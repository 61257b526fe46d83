package cistern.clinic.web;

import cistern.clinic.setting.Setting;
import cistern.report.markup.Element;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.web.servlet.function.ServerRequest;

/** What every request passes: the session, the token of a form, the routes, the headers. */
public final class Guard {

  /** Nothing but what this program itself serves, and no script or style inside a page. */
  public static final String CONTENT_POLICY =
      "default-src 'none'; style-src 'self'; script-src 'self'; connect-src 'self'; img-src 'self';"
          + " font-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private static final int MILLION = 1_000_000;

  private final Frame frame;
  private final Routes routes;

  private Guard(Frame frame, Routes routes) {
    this.frame = frame;
    this.routes = routes;
  }

  /** The guard of some routes. */
  public static Guard of(Frame frame, Routes routes) {
    return new Guard(frame, routes);
  }

  /** The chain for the security framework. */
  public SecurityFilterChain toChain(HttpSecurity http) {
    return http.authorizeHttpRequests(a -> a.anyRequest().access(routes))
        .securityContext(
            s -> s.securityContextRepository(new HttpSessionSecurityContextRepository()))
        .headers(
            h ->
                h.contentSecurityPolicy(c -> c.policyDirectives(CONTENT_POLICY))
                    .referrerPolicy(r -> r.policy(ReferrerPolicy.SAME_ORIGIN))
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

  /** Sends a stranger to sign in, and back to where the stranger wanted to go. */
  private static void ask(HttpServletRequest request, HttpServletResponse response)
      throws IOException {
    String path = request.getRequestURI();
    boolean isNamed = path.matches("(/[A-Za-z0-9-]+)+");
    response.setStatus(HttpStatus.SEE_OTHER.value());
    response.setHeader("Location", "/sign-in" + (isNamed ? "?next=" + path : ""));
  }

  private void refuse(
      HttpServletRequest request, HttpServletResponse response, AccessDeniedException failure)
      throws IOException {
    if (isTooLarge(request)) {
      write(
          request,
          response,
          HttpStatus.CONTENT_TOO_LARGE,
          "What was sent is larger than what is taken: a picture may have "
              + Setting.PICTURE_BYTES.number() / MILLION
              + " MB. Nothing was changed.");
    } else if (failure instanceof CsrfException) {
      write(
          request,
          response,
          HttpStatus.FORBIDDEN,
          "This form is of a session that has ended. Nothing was changed, and what you typed stays"
              + " in this tab: sign in, and go back to it.");
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

  private void write(
      HttpServletRequest request, HttpServletResponse response, HttpStatus status, String text)
      throws IOException {
    Visit visit = new Visit(ServerRequest.create(request, List.of()), Routes.visitor(request));
    Element back =
        Element.of("p", Html.link("/", "To the start"))
            .withText(" ")
            .with(visit.visitor().isEmpty() ? Html.link("/sign-in", "Sign in") : Html.nothing());
    response.setStatus(status.value());
    response.setContentType("text/html;charset=UTF-8");
    response
        .getOutputStream()
        .write(
            frame
                .toHtml(visit, "Not here", Element.of("h1", "Not here"), Html.paragraph(text), back)
                .getBytes(StandardCharsets.UTF_8));
  }
}
