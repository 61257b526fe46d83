package cistern.clinic.status;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases;
import cistern.clinic.setting.Setting;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonDocument;
import cistern.fact.FactValue;
import cistern.fact.UnitKey;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The units that a laboratory used last, as the cases show that were changed last. */
public final class LaboratoryUnits {

  private static final String RESULTS = "results";
  private static final String LABORATORY = "laboratory";

  private final Cases cases;
  private final Medicine medicine;
  private final AtomicReference<UnitsFound> known =
      new AtomicReference<>(new UnitsFound("", Map.of()));

  private LaboratoryUnits(Cases cases, Medicine medicine) {
    this.cases = cases;
    this.medicine = medicine;
  }

  /** The units in some cases. */
  public static LaboratoryUnits of(Cases cases, Medicine medicine) {
    return new LaboratoryUnits(cases, medicine);
  }

  /**
   * What was found, and the state of the cases that it was found in.
   *
   * @param state changes with any of the cases
   * @param unitsByLaboratory by the laboratory's name, then by the code of the sample
   */
  private record UnitsFound(String state, Map<String, Map<String, String>> unitsByLaboratory) {}

  /**
   * The units for the laboratory that a file names, by the code of the sample: those that local
   * policy says for it, else those that it used last, and for others those of the house.
   */
  public Map<String, String> of(Json.Structure file) {
    List<CaseVersion> last = cases.lastChanged(Setting.UNIT_CASES.number());
    String state =
        last.stream().map(v -> v.caseId() + "/" + v.number()).collect(Collectors.joining(" "));
    UnitsFound before = known.get();
    if (!before.state().equals(state)) {
      before = new UnitsFound(state, found(last));
      known.set(before);
    }
    String laboratory = text(file, LABORATORY);
    Map<String, String> units = new HashMap<>();
    choose(key -> key.laboratory().isEmpty(), units);
    units.putAll(before.unitsByLaboratory().getOrDefault(laboratory, Map.of()));
    choose(key -> key.isOf(laboratory), units);
    return units;
  }

  /** What local policy says for the house or for one laboratory: a unit, or to ask for one. */
  private void choose(Predicate<UnitKey> whose, Map<String, String> units) {
    for (String key : medicine.facts().keys(UnitKey.START)) {
      UnitKey.parse(key)
          .filter(whose)
          .ifPresent(
              unit -> {
                if (medicine.facts().fact(key).value() instanceof FactValue.Unit own) {
                  units.put(unit.sample(), own.written());
                } else {
                  units.remove(unit.sample());
                }
              });
    }
  }

  private Map<String, Map<String, String>> found(List<CaseVersion> last) {
    Map<String, Map<String, String>> all = new HashMap<>();
    for (CaseVersion version : last) {
      byte[] bytes = version.workup().getBytes(StandardCharsets.UTF_8);
      JsonDocument.read(
              new ByteArrayInputStream(bytes),
              InputLimits.of(medicine.facts()),
              new InputProblems())
          .ifPresent(file -> note(file, all));
    }
    return all;
  }

  private static void note(Json.Structure file, Map<String, Map<String, String>> all) {
    Map<String, String> units =
        all.computeIfAbsent(text(file, LABORATORY), name -> new HashMap<>());
    if (file.members().get(RESULTS) instanceof Json.Sequence results) {
      for (Json each : results.items()) {
        if (each instanceof Json.Structure result && !text(result, "unit").isEmpty()) {
          units.putIfAbsent(
              text(result, "analyte") + "." + text(result, "in"), text(result, "unit"));
        }
      }
    }
  }

  private static String text(Json.Structure structure, String name) {
    return structure.members().get(name) instanceof Json.Text text ? text.value() : "";
  }
}
