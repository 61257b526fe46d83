package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.store.Engines;
import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** Every route with every role, against a table that is written by hand. */
@TestInstance(Lifecycle.PER_CLASS)
class RoutesTest {

  private static final String ANY = "everybody";

  private final Running running = Running.on(Engines.folder());
  private final Map<String, List<String>> rolesByRoute = new TreeMap<>();

  @BeforeAll
  void readTable() throws IOException {
    try (InputStream in = RoutesTest.class.getResourceAsStream("routes.tsv")) {
      new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(line -> line.split("\t", -1))
          .forEach(c -> rolesByRoute.put(c[0], Arrays.asList(c[1].split(" ", -1))));
    }
  }

  @AfterAll
  void stop() {
    running.close();
  }

  @Test
  void routes_ofTheApplication_areThoseOfTheTable() {
    assertThat(running.clinic().routes().all())
        .extracting(r -> r.method() + " " + r.path())
        .containsExactlyInAnyOrderElementsOf(rolesByRoute.keySet());
  }

  @Test
  void route_withEveryRole_isOpenOnlyToThoseOfTheTable() {
    Map<Role, Caller> callers = new EnumMap<>(Role.class);
    Map<Role, String> tokens = new EnumMap<>(Role.class);
    for (Role role : Role.values()) {
      Caller caller = running.signedIn(role);
      callers.put(role, caller);
      tokens.put(role, caller.token());
    }
    Map<String, String> wrong = new HashMap<>();
    rolesByRoute.forEach(
        (route, allowed) -> {
          for (Role role : Role.values()) {
            if (route.equals("POST /sign-out") || allowed.contains(ANY)) {
              continue;
            }
            HttpResponse<String> answer =
                ask(
                    Objects.requireNonNull(callers.get(role)),
                    route,
                    Objects.requireNonNull(tokens.get(role)));
            boolean isRefused = answer.statusCode() == 403;
            if (isRefused == allowed.contains(role.word())) {
              wrong.put(route + " by " + role.word(), "answered " + answer.statusCode());
            }
          }
        });

    assertThat(wrong).isEmpty();
  }

  @Test
  void route_withoutSigningIn_asksToSignIn() {
    Caller stranger = running.stranger();
    String token = stranger.token();
    Map<String, String> wrong = new HashMap<>();
    rolesByRoute.forEach(
        (route, allowed) -> {
          HttpResponse<String> answer = ask(stranger, route, token);
          boolean isAsked =
              answer.statusCode() == 303 && Caller.place(answer).startsWith("/sign-in");
          if (!allowed.contains(ANY) && !isAsked) {
            wrong.put(route, "answered " + answer.statusCode());
          }
        });

    assertThat(wrong).isEmpty();
  }

  @Test
  void path_thatIsNoRoute_isNotThere() {
    Caller clinician = running.signedIn(Role.CLINICIAN);

    for (String path : List.of("/actuator", "/error", "/accounts/x", "/case", "//", "/%2e%2e/")) {
      assertThat(clinic(clinician, path)).as(path).isIn(303, 400, 404);
    }
  }

  private static int clinic(Caller caller, String path) {
    return caller.get(path).statusCode();
  }

  private static HttpResponse<String> ask(Caller caller, String route, String token) {
    String[] parts = route.split(" ", 2);
    String path = parts[1].replaceAll("\\{[a-z]+\\}", "1");
    return parts[0].equals("GET") ? caller.get(path) : caller.post(path, Map.of(), token);
  }
}
