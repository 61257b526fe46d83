package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.criteria.CriteriaResult;
import cistern.criteria.CriteriaVerdict;
import cistern.criteria.Item;
import cistern.interpretation.Interpretation;
import cistern.urgent.Consideration;
import cistern.urgent.Stop;
import cistern.urgent.Urgency;
import cistern.urgent.UrgentRules;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every urgent rule at its trigger, just under and just over, and every stop: each row of the table
 * says what must come out. The thresholds are those of the fact table; the test vectors are those
 * that the rules were agreed with.
 */
class UrgentCasesTest {

  record Row(String results, String members, String expected) {}

  static Stream<Named<Row>> rows() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(UrgentCasesTest.class.getResourceAsStream("/urgent/cases.txt"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .map(line -> line.split(" \\| ", -1))
          .map(p -> Named.of(p[0], new Row(p[1], p[2], p[3])));
    }
  }

  @ParameterizedTest
  @MethodSource("rows")
  void interpret_aRow_givesWhatItSays(Row row) {
    Interpretation got = ShortWorkup.interpret(row.results(), row.members());

    for (String expected : row.expected().strip().split(" ", -1)) {
      check(got, expected);
    }
  }

  private static void check(Interpretation got, String expected) {
    String rest = expected.substring(expected.indexOf(':') + 1);
    List<String> holding =
        got.alerts().urgent().holding().stream().map(UrgentCasesTest::tiered).toList();
    List<String> stops = got.alerts().stops().stream().map(UrgentCasesTest::stopped).toList();
    if (expected.startsWith("-T")) {
      assertThat(holding).as(expected).doesNotContain(expected.substring(1));
    } else if (expected.startsWith("-")) {
      assertThat(holding).as(expected).noneMatch(h -> h.endsWith(":" + expected.substring(1)));
    } else if (expected.startsWith("T")) {
      assertThat(holding).contains(expected);
    } else {
      checkNamed(got, expected.substring(0, expected.indexOf(':')), rest, stops);
    }
  }

  private static void checkNamed(Interpretation got, String what, String rest, List<String> stops) {
    List<Urgency> all = got.alerts().urgent().all();
    switch (what) {
      case "first" -> assertThat(got.statements().getFirst().code()).isEqualTo(rest);
      case "?" -> assertThat(all).anyMatch(u -> !u.holds() && u.code().equals(rest));
      case "says" ->
          assertThat(all).anyMatch(u -> u.words().say().startsWith(rest.replace('_', ' ')));
      case "none" -> assertThat(all).noneMatch(u -> u.code().equals(rest));
      case "only" -> assertThat(all).extracting(Urgency::code).containsExactly(rest);
      case "stop" -> assertThat(stops).contains(rest);
      case "nostop" -> assertThat(stops).noneMatch(s -> s.startsWith(rest + "="));
      case "think" ->
          assertThat(got.alerts().thinkOf().stream().map(Consideration::code).toList())
              .startsWith(rest);
      case "puncture" ->
          assertThat(effect(got, rest.split("=", -1)[0])).isEqualTo(rest.split("=", -1)[1]);
      case "undetermined" -> waiting(got.weighed().criteria());
      case "met" -> assertThat(verdict(got, rest)).isEqualTo(CriteriaVerdict.MET);
      case "not-met" -> assertThat(verdict(got, rest)).isEqualTo(CriteriaVerdict.NOT_MET);
      default -> throw new AssertionError("no such expectation: " + what);
    }
  }

  private static String effect(Interpretation got, String edition) {
    return Objects.requireNonNull(got.weighed().puncture().effects().get(edition)).word();
  }

  private static CriteriaVerdict verdict(Interpretation got, String edition) {
    return got.weighed().criteria().stream()
        .filter(c -> c.edition().equals(edition))
        .findFirst()
        .orElseThrow()
        .verdict();
  }

  private static void waiting(List<CriteriaResult> results) {
    assertThat(results)
        .allMatch(r -> r.verdict() == CriteriaVerdict.UNDETERMINED)
        .allMatch(r -> r.missing().equals(List.of(List.of(Item.NO_BETTER_EXPLANATION))));
  }

  private static String tiered(Urgency urgency) {
    return urgency.tier() + ":" + urgency.code();
  }

  private static String stopped(Stop stop) {
    return stop.code() + "=" + stop.effect().word();
  }

  /** Guards the table itself: every rule and every stop has a row. */
  @Test
  void rows_together_nameEveryRuleAndStop() throws IOException {
    String all = rows().map(n -> n.getPayload().expected()).reduce("", (a, b) -> a + " " + b);

    assertThat(UrgentRules.codes()).allMatch(code -> all.contains(":" + code));
    assertThat(Arrays.asList("pair-defect", "emergency-open")).allMatch(all::contains);
  }
}
