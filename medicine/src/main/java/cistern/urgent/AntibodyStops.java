package cistern.urgent;

import cistern.bedside.Syndrome;
import cistern.bedside.TreatmentKind;
import cistern.differential.Serology;
import cistern.differential.Serology.Method;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.panel.Circumstance;
import cistern.urgent.Stop.Effect;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** The stops that rest on antibodies against aquaporin-4 and MOG. */
final class AntibodyStops {

  private static final List<String> CLEAR = List.of("clear", "high", "strong");

  private final Observed observed;

  private AntibodyStops(Observed observed) {
    this.observed = observed;
  }

  static List<Stop> of(Observed observed) {
    return new AntibodyStops(observed).all();
  }

  private List<Stop> all() {
    List<Stop> stops = new ArrayList<>();
    addAquaporin(stops);
    addMog(stops);
    if (isNegativeAfterTreatment()) {
      stops.add(
          stop(
              "antibody-after-treatment",
              Effect.SENTENCE,
              "Negative after treatment: repeat on pre-treatment serum, or later."));
    }
    return stops;
  }

  private Stop stop(String code, Effect effect, String text) {
    return Stops.stop(observed, code, effect, text);
  }

  private Stream<Serology> tests(String name, Compartment in) {
    return observed.serology().stream().filter(s -> s.test().equals(name) && s.in() == in);
  }

  private Stream<Serology> positive(String name, Compartment in) {
    return tests(name, in).filter(s -> s.result() == Serology.Result.POSITIVE);
  }

  private boolean isAquaporinNegative() {
    return tests(Serology.AQP4_IGG, Compartment.SERUM)
            .anyMatch(s -> s.result() == Serology.Result.NEGATIVE)
        && positive(Serology.AQP4_IGG, Compartment.SERUM).findAny().isEmpty();
  }

  private void addAquaporin(List<Stop> stops) {
    List<Serology> found = positive(Serology.AQP4_IGG, Compartment.SERUM).toList();
    boolean isRefuted =
        tests(Serology.AQP4_IGG, Compartment.SERUM)
            .anyMatch(
                s -> s.method() == Method.CELL_BASED && s.result() == Serology.Result.NEGATIVE);
    if (found.stream().anyMatch(s -> s.method() == Method.CELL_BASED)) {
      stops.add(
          stop(
              "aqp4-positive",
              Effect.CONTRADICTION,
              "AQP4-IgG positive: NMOSD criteria first; MS criteria do not apply until it is explained."));
    } else if (!found.isEmpty() && !isRefuted) {
      stops.add(
          stop(
              "aqp4-method-unknown",
              Effect.CONTRADICTION,
              "AQP4-IgG positive, but method decides: repeat by cell-based assay."));
    }
  }

  private void addMog(List<Stop> stops) {
    List<Serology> inSerum =
        tests(Serology.MOG_IGG, Compartment.SERUM).filter(AntibodyStops::isFound).toList();
    List<Syndrome> syndromes = observed.bedside().attack().syndromes();
    if (inSerum.stream().anyMatch(this::isClear)) {
      boolean isOther = !syndromes.isEmpty() && syndromes.stream().noneMatch(Syndrome::isCoreEvent);
      stops.add(
          stop(
              "mog-clear-positive",
              isOther ? Effect.SENTENCE : Effect.CONTRADICTION,
              syndromes.isEmpty() || isOther
                  ? "Clear MOG-IgG: with a core event, MOGAD criteria come first; name the syndrome."
                  : "Clear MOG-IgG with a core event: MOGAD criteria first."));
      return;
    }
    boolean isInFluid = tests(Serology.MOG_IGG, Compartment.CSF).anyMatch(AntibodyStops::isFound);
    if (!inSerum.isEmpty() || isInFluid) {
      boolean isSupported =
          observed.bedside().attack().supportingSigns().stream().anyMatch(s -> !s.isBlank());
      stops.add(
          stop(
              "mog-low",
              isSupported && isAquaporinNegative() ? Effect.CONTRADICTION : Effect.SENTENCE,
              "Low or CSF-only MOG-IgG: needs AQP4 negative and a supporting sign."));
    }
  }

  private static boolean isFound(Serology test) {
    return test.result() == Serology.Result.POSITIVE || test.result() == Serology.Result.BORDERLINE;
  }

  private boolean isClear(Serology test) {
    OptionalInt dilution = test.dilution();
    String words = test.titre().orElse("").toLowerCase(Locale.ROOT);
    boolean isHigh =
        dilution.isPresent()
            ? dilution.getAsInt() >= observed.facts().number("stop.mog.clear.titre.from")
            : CLEAR.stream().anyMatch(words::contains);
    return test.result() == Serology.Result.POSITIVE && test.method() != Method.ELISA && isHigh;
  }

  /** Negative in serum after a treatment that lowers it, or looked for in CSF alone. */
  private boolean isNegativeAfterTreatment() {
    return Stream.of(Serology.MOG_IGG, Serology.AQP4_IGG).anyMatch(this::isNegativeUnsure);
  }

  private boolean isNegativeUnsure(String name) {
    boolean isNegative =
        tests(name, Compartment.SERUM).anyMatch(s -> s.result() == Serology.Result.NEGATIVE);
    boolean isOnlyFluid =
        tests(name, Compartment.SERUM).findAny().isEmpty()
            && tests(name, Compartment.CSF).anyMatch(s -> s.result() == Serology.Result.NEGATIVE);
    return isOnlyFluid || (isNegative && isTreated());
  }

  private boolean isTreated() {
    boolean isStated =
        Stream.of(
                Circumstance.CORTICOSTEROIDS,
                Circumstance.PLASMA_EXCHANGE,
                Circumstance.IMMUNOGLOBULIN_INFUSION)
            .map(observed.results()::answer)
            .anyMatch(Answer::isYes);
    return isStated
        || Stream.of(
                TreatmentKind.STEROIDS, TreatmentKind.PLASMA_EXCHANGE, TreatmentKind.IMMUNOGLOBULIN)
            .anyMatch(kind -> Treated.isBefore(observed, kind));
  }
}
