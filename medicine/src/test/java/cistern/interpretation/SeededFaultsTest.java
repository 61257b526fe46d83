package cistern.interpretation;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.measurement.Answer;
import cistern.panel.Circumstance;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.PanelText;
import cistern.panel.Person;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Generated work-ups with one seeded fault each: the fault is named and nothing else is. */
class SeededFaultsTest {

  private static final int WORKUPS = 200;

  /** What can go wrong with a sound panel, and the code that must name it. */
  private enum Fault {
    NONE(""),
    SWAPPED_ALBUMIN("compartments-swapped"),
    SWAPPED_IGG("compartments-swapped"),
    SLIPPED_SERUM_ALBUMIN("unit-slip-suspected"),
    SLIPPED_CSF_IGG("unit-slip-suspected"),
    IMPLAUSIBLE_SERUM("implausible-value"),
    NO_SERUM_IGG("serum-missing"),
    NO_CSF_ALBUMIN("csf-missing"),
    DRAWS_DOUBTFUL("draws-far-apart"),
    DRAWS_INVALID("draws-far-apart"),
    LOW_SERUM_IGG("serum-igg-low"),
    LOW_SERUM_ALBUMIN("serum-albumin-low"),
    BLOOD("blood-contaminated"),
    CISTERNAL("not-lumbar"),
    INFUSED("recent-immunoglobulin"),
    EXCHANGED("plasma-exchange"),
    HOOK("antigen-excess-suspected"),
    LEAK_BEYOND_RANGE("quotient-outside-range"),
    FRACTIONS("implausible-value");

    private final String code;

    Fault(String code) {
      this.code = code;
    }
  }

  private final Random draw = new Random(20_340_509);

  @Test
  void interpret_workupsWithOneFault_namesItAndNothingElse() {
    for (int i = 0; i < WORKUPS; i++) {
      Fault fault = Fault.values()[i % Fault.values().length];
      Map<String, Double> sound = sound();
      Interpretation got = Interpreted.of(panel(fault, sound));
      List<String> expected = fault == Fault.NONE ? List.of() : List.of(fault.code);

      assertThat(Interpreted.problems(got)).as("%s in %s", fault, sound).isEqualTo(expected);
    }
  }

  private Map<String, Double> sound() {
    Map<String, Double> values = new LinkedHashMap<>();
    values.put("albumin.serum", 37_000 + 10_000 * draw.nextDouble());
    values.put("igg.serum", 8_000 + 6_000 * draw.nextDouble());
    values.put(
        "albumin.csf",
        values.getOrDefault("albumin.serum", 0.0) * (3 + 6 * draw.nextDouble()) * 1e-3);
    double quotient =
        values.getOrDefault("albumin.csf", 0.0) / values.getOrDefault("albumin.serum", 0.0);
    values.put(
        "igg.csf",
        values.getOrDefault("igg.serum", 0.0) * quotient * (0.45 + 0.5 * draw.nextDouble()));
    values.put("kappa-flc.serum", 8 + 9 * draw.nextDouble());
    values.put(
        "kappa-flc.csf",
        values.getOrDefault("kappa-flc.serum", 0.0) * (0.01 + 0.2 * draw.nextDouble()));
    values.put("leukocytes.csf", (double) draw.nextInt(12));
    values.put("erythrocytes.csf", (double) draw.nextInt(300));
    values.put("glucose.csf", 3 + draw.nextDouble());
    values.put("glucose.serum", 5 + draw.nextDouble());
    return values;
  }

  private Panel panel(Fault fault, Map<String, Double> values) {
    Map<String, Double> v = new LinkedHashMap<>(values);
    switch (fault) {
      case SWAPPED_ALBUMIN -> swap(v, "albumin");
      case SWAPPED_IGG -> swap(v, "igg");
      case SLIPPED_SERUM_ALBUMIN -> v.computeIfPresent("albumin.serum", (k, x) -> x / 1000);
      case SLIPPED_CSF_IGG -> v.computeIfPresent("igg.csf", (k, x) -> x * 1000);
      case IMPLAUSIBLE_SERUM -> v.put("igg.serum", 90_000_000.0 * (1 + draw.nextDouble()));
      case NO_SERUM_IGG -> v.remove("igg.serum");
      case NO_CSF_ALBUMIN -> v.remove("albumin.csf");
      case LOW_SERUM_IGG -> lower(v, "igg", 3_000 + 3_900 * draw.nextDouble());
      case LOW_SERUM_ALBUMIN -> lower(v, "albumin", 22_000 + 12_000 * draw.nextDouble());
      case BLOOD -> v.put("erythrocytes.csf", 501.0 + draw.nextInt(90_000));
      case HOOK -> v.computeIfPresent("igg.csf", (k, x) -> v.getOrDefault("igg.serum", 0.0) * 4e-4);
      case LEAK_BEYOND_RANGE -> {
        v.put("albumin.csf", v.getOrDefault("albumin.serum", 0.0) * 0.17);
        v.put("igg.csf", v.getOrDefault("igg.serum", 0.0) * 0.15);
      }
      case FRACTIONS -> {
        v.put("lymphocytes.csf", 0.9);
        v.put("monocytes.csf", 0.3);
      }
      case NONE, DRAWS_DOUBTFUL, DRAWS_INVALID, CISTERNAL, INFUSED, EXCHANGED -> {}
    }
    String text =
        v.entrySet().stream()
            .map(e -> e.getKey() + "=" + e.getValue())
            .collect(Collectors.joining(" "));
    return around(fault, PanelText.of(Person.aged(40), text, hours(fault)));
  }

  private double hours(Fault fault) {
    return switch (fault) {
      case DRAWS_DOUBTFUL -> 25 + 140 * draw.nextDouble();
      case DRAWS_INVALID -> -169 - 100 * draw.nextDouble();
      default -> 23 * draw.nextDouble();
    };
  }

  private static Panel around(Fault fault, Panel panel) {
    return switch (fault) {
      case INFUSED ->
          panel.withCircumstances(Map.of(Circumstance.IMMUNOGLOBULIN_INFUSION, Answer.YES));
      case EXCHANGED -> panel.withCircumstances(Map.of(Circumstance.PLASMA_EXCHANGE, Answer.YES));
      case CISTERNAL -> panel.withDraws(from(panel.csf(), "cisternal"), panel.serum());
      default -> panel;
    };
  }

  private static Draw from(Draw csf, String site) {
    return new Draw(
        csf.at(), csf.receivedAt(), csf.appearance(), Optional.of(site), csf.volumeMl());
  }

  private static void swap(Map<String, Double> v, String analyte) {
    double csf = v.getOrDefault(analyte + ".csf", 0.0);
    v.put(analyte + ".csf", v.getOrDefault(analyte + ".serum", 0.0));
    v.put(analyte + ".serum", csf);
  }

  /** A lower serum value at the same quotient, so that only the serum is at fault. */
  private static void lower(Map<String, Double> v, String analyte, double serum) {
    double quotient =
        v.getOrDefault(analyte + ".csf", 0.0) / v.getOrDefault(analyte + ".serum", 0.0);
    v.put(analyte + ".serum", serum);
    v.put(analyte + ".csf", serum * quotient);
  }
}
