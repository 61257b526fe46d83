package cistern.report.wording;

import cistern.bedside.MicrobeTest;
import cistern.differential.Serology;
import cistern.interpretation.Interpretation;
import cistern.measurement.Compartment;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One test for a microbe or an antibody, in words.
 *
 * @param name what was looked for, in which fluid
 * @param detail titre and method; empty where neither is said
 * @param result what came out
 */
public record TestWords(String name, String detail, String result) {

  /** The result of a test that was sent and has not come back. */
  public static final String OUTSTANDING = "outstanding";

  /** Every test of a puncture, microbes first. */
  public static List<TestWords> of(Interpretation said) {
    List<TestWords> all = new ArrayList<>();
    said.workup().clinical().bedside().microbes().forEach(t -> all.add(of(t)));
    said.workup().clinical().serology().forEach(t -> all.add(of(t)));
    return all;
  }

  private static TestWords of(MicrobeTest test) {
    boolean isOpen = test.result() == MicrobeTest.Result.PENDING;
    return new TestWords(
        test.toText() + in(test.in()), "", isOpen ? OUTSTANDING : test.result().word());
  }

  private static TestWords of(Serology test) {
    String method =
        switch (test.method()) {
          case CELL_BASED -> "cell-based";
          case ELISA -> "ELISA";
          case UNKNOWN -> "";
        };
    String detail =
        Stream.of(test.titre().orElse(""), method)
            .filter(t -> !t.isEmpty())
            .collect(Collectors.joining(", "));
    String result =
        switch (test.result()) {
          case UNKNOWN -> "result not known";
          case POSITIVE, NEGATIVE, BORDERLINE -> test.result().word();
        };
    return new TestWords(antibody(test.test()) + in(test.in()), detail, result);
  }

  private static String antibody(String test) {
    return test.endsWith("-igg")
        ? test.substring(0, test.length() - "-igg".length()).toUpperCase(Locale.ROOT) + "-IgG"
        : test;
  }

  private static String in(Compartment fluid) {
    return switch (fluid) {
      case CSF -> " in CSF";
      case SERUM -> " in serum";
      case BLOOD -> " in blood";
    };
  }

  /** Whether it was sent and has not come back. */
  public boolean isOutstanding() {
    return result.equals(OUTSTANDING);
  }

  /** In one phrase. */
  public String toText() {
    return name + " " + result + (detail.isEmpty() ? "" : " (" + detail + ")");
  }
}
