package cistern.urgent;

import cistern.bedside.Treatment;
import cistern.bedside.TreatmentKind;
import cistern.panel.Circumstance;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SequencedMap;
import java.util.stream.Stream;

/** What had been given before the fluid was drawn. */
final class Treated {

  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);

  private Treated() {}

  /** Whether a kind of treatment was, or may have been, begun before the puncture. */
  static boolean isBefore(Observed observed, TreatmentKind kind) {
    return given(observed).anyMatch(t -> t.is(kind));
  }

  private static Stream<Treatment> given(Observed observed) {
    return observed.bedside().treatments().stream()
        .filter(t -> t.isBefore(observed.results().csf().at()));
  }

  /** Steroids, by name or as a circumstance. */
  static boolean isOnSteroids(Observed observed) {
    return observed.results().answer(Circumstance.CORTICOSTEROIDS).isYes()
        || isBefore(observed, TreatmentKind.STEROIDS);
  }

  /** Every kind with the name and the date of what was given. */
  static SequencedMap<TreatmentKind, String> kinds(Observed observed) {
    SequencedMap<TreatmentKind, String> kinds = new LinkedHashMap<>();
    given(observed)
        .forEach(
            t -> TreatmentKind.of(t.drug()).ifPresent(k -> kinds.putIfAbsent(k, described(t))));
    if (isOnSteroids(observed)) {
      kinds.putIfAbsent(TreatmentKind.STEROIDS, "steroids");
    }
    boolean isNamed = kinds.keySet().stream().anyMatch(TreatmentKind::isDepleting);
    if (observed.results().answer(Circumstance.B_CELL_DEPLETION).isYes() && !isNamed) {
      kinds.put(TreatmentKind.ANTI_CD20, "B-cell depletion");
    }
    return kinds;
  }

  /** What can hide a positive result: every drug, but not what only adds to or takes from serum. */
  static List<String> hiding(Observed observed) {
    return kinds(observed).entrySet().stream()
        .filter(
            e ->
                switch (e.getKey()) {
                  case IMMUNOGLOBULIN, PLASMA_EXCHANGE -> false;
                  case STEROIDS, ANTI_CD20, NATALIZUMAB, CLADRIBINE, STEM_CELLS, OTHER_IMMUNE ->
                      true;
                })
        .map(Map.Entry::getValue)
        .toList();
  }

  private static String described(Treatment treatment) {
    return treatment.drug()
        + treatment.from().map(at -> " (from " + DATE.format(at) + ")").orElse("");
  }
}
