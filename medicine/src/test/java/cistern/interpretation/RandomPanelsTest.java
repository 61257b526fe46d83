package cistern.interpretation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.bands.BandReport;
import cistern.checks.OutsideCheck;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.fluid.TotalProtein;
import cistern.measurement.Interval;
import cistern.panel.PanelText;
import cistern.panel.Person;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Every finding against random_panels.py, which was written from the formulas alone. */
class RandomPanelsTest {

  /** Relative; issue of the project: "agreeing to 10⁻⁹". */
  private static final double TOLERANCE = 1e-9;

  /** One limit of the protein at every age, as the computation beside has it. */
  private static final Interpreter ONE_LIMIT =
      Interpreter.of(
          Facts.standard()
              .with(
                  new Policy(
                      "one limit",
                      Map.of(
                          TotalProtein.RULE_KEY,
                          new Policy.Change(new FactValue.Word(TotalProtein.FIXED), "test")))));

  private static final List<String> WITHHELD =
      List.of(
          "immunoglobulin infusion",
          "blood in the CSF can feign",
          "corrected for blood has another verdict",
          "first 90 days",
          "is doubted");

  @Nested
  class Published {

    @Test
    void interpret_ofRandomPanels_agreesWithTheIndependentComputation() throws IOException {
      int compared = 0;
      double worst = 0;
      for (String line : lines()) {
        String[] cells = line.split("\t", -1);
        Person person =
            cells[0].equals("-") ? Person.UNKNOWN : Person.aged(Double.parseDouble(cells[0]));
        Interpretation got =
            ONE_LIMIT.interpret(
                new Workup(
                    "random",
                    PanelText.of(person, cells[2], Double.parseDouble(cells[1])),
                    new BandReport.NotReported(),
                    List.of()));
        for (String expected : cells[3].split(" ", -1)) {
          worst = Math.max(worst, compare(got, expected, line));
          compared++;
        }
      }

      assertThat(compared).isEqualTo(300 * FindingCode.values().length);
      assertThat(worst).isLessThan(TOLERANCE);
      OutsideCheck.of(
              "Every finding and verdict of 300 random panels, censored ones among them",
              "independent computation, random_panels.py beside the test",
              "relative 1e-9, verdicts equal")
          .toTable(compared + " of " + compared + " agree");
    }

    private double compare(Interpretation got, String expected, String line) {
      int equals = expected.indexOf('=');
      int bar = expected.indexOf('|');
      FindingCode code = FindingCode.parse(expected.substring(0, equals)).orElseThrow();
      Finding finding = got.findings().get(code);
      // the computation beside knows no infusion, no site, and no slip of albumin in protein
      boolean isWithheld =
          WITHHELD.stream().anyMatch(finding.note()::contains)
              && finding.verdict() == Verdict.UNDETERMINED;
      if (!isWithheld) {
        assertThat(finding.verdict().word())
            .as("%s: %s", code.code(), line)
            .isEqualTo(expected.substring(bar + 1));
      }
      String value = expected.substring(equals + 1, bar);
      if (!finding.hasValue()) {
        assertThat(value).as(code.code()).isEqualTo("-");
        return 0;
      }
      Interval read = finding.value().orElseThrow();
      if (read.isExact()) {
        return deviation(read.exactly(), value, code, line);
      }
      int dots = value.indexOf("..");
      return Math.max(
          deviation(read.lower(), value.substring(0, dots), code, line),
          deviation(read.upper(), value.substring(dots + 2), code, line));
    }

    private double deviation(double got, String text, FindingCode code, String line) {
      if (text.equals("inf") || text.equals("-inf")) {
        assertThat(got).as("%s: %s", code.code(), line).isInfinite();
        return 0;
      }
      double expected = Double.parseDouble(text);
      double scale = Math.max(Math.abs(expected), 1e-6);
      assertThat(got).as("%s: %s", code.code(), line).isCloseTo(expected, within(scale * 1e-9));
      return Math.abs(got - expected) / scale;
    }

    private List<String> lines() throws IOException {
      try (BufferedReader in =
          new BufferedReader(
              new InputStreamReader(
                  Objects.requireNonNull(
                      RandomPanelsTest.class.getResourceAsStream("random_panels.tsv")),
                  StandardCharsets.UTF_8))) {
        return in.lines().filter(line -> !line.startsWith("#")).toList();
      }
    }
  }
}
