package cistern.exchange.fhir;

import cistern.exchange.lab.Coding;
import cistern.exchange.lab.Moment;
import cistern.exchange.lab.ReportedResult;
import cistern.exchange.lab.ReportedResult.Range;
import cistern.exchange.lab.ReportedResult.Remarks;
import cistern.exchange.lab.ReportedResult.Standing;
import cistern.exchange.lab.ReportedSpecimen;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The results of one Observation: its own and those of its components. */
final class ObservationResult {

  private static final String UCUM = "http://unitsofmeasure.org";

  private final Resources resources;
  private final Map<String, ReportedSpecimen> specimens = new HashMap<>();

  ObservationResult(Resources resources) {
    this.resources = resources;
  }

  /**
   * The results.
   *
   * @param observation the resource
   * @param report the DiagnosticReport that names it, if any
   */
  List<ReportedResult> read(FhirElement observation, Optional<FhirElement> report) {
    ReportedSpecimen named = specimen(observation, report);
    ReportedSpecimen specimen =
        named.collectedAt().isPresent()
            ? named
            : named.takenAt(FhirTime.of(observation, "effective"));
    Standing ofReport = standing(report.map(r -> r.text("status")).orElse(""));
    Standing own = standing(observation.text("status"));
    Standing standing = ofReport == Standing.CANCELLED ? ofReport : own;
    List<ReportedResult> results = new ArrayList<>();
    List<FhirElement> components = observation.all("component");
    boolean isGroup = !components.isEmpty() || !observation.all("hasMember").isEmpty();
    if (!isGroup || !value(observation).isEmpty()) {
      results.add(result(observation, specimen, standing));
    }
    components.forEach(component -> results.add(result(component, specimen, standing)));
    return results;
  }

  private ReportedSpecimen specimen(FhirElement observation, Optional<FhirElement> report) {
    List<FhirElement> ofReport = report.map(r -> r.all("specimen")).orElse(List.of());
    Optional<FhirElement> reference =
        observation
            .first("specimen")
            .or(() -> ofReport.size() == 1 ? Optional.of(ofReport.getFirst()) : Optional.empty());
    return reference
        .map(r -> resources.resolve(r).map(this::known).orElseGet(() -> named(r)))
        .orElse(ReportedSpecimen.UNKNOWN);
  }

  /** A specimen that many observations share is read once. */
  private ReportedSpecimen known(FhirElement specimen) {
    return specimens.computeIfAbsent(specimen.path(), path -> specimen(specimen));
  }

  private static ReportedSpecimen named(FhirElement reference) {
    String display = reference.text("display");
    return display.isEmpty() ? ReportedSpecimen.UNKNOWN : ReportedSpecimen.of(display);
  }

  private static ReportedSpecimen specimen(FhirElement specimen) {
    List<String> words = new ArrayList<>();
    for (FhirElement type : specimen.all("type")) {
      type.all("coding").forEach(c -> words.addAll(List.of(c.text("code"), c.text("display"))));
      words.add(type.text("text"));
    }
    return new ReportedSpecimen(
        words.stream().filter(word -> !word.isEmpty()).distinct().toList(),
        specimen.first("collection").flatMap(c -> FhirTime.of(c, "collected")),
        FhirTime.parse(specimen.text("receivedTime")));
  }

  private static Standing standing(String status) {
    return switch (status) {
      case "preliminary" -> Standing.PRELIMINARY;
      case "amended", "corrected" -> Standing.AMENDED;
      case "cancelled", "entered-in-error" -> Standing.CANCELLED;
      case "registered" -> Standing.AWAITED;
      default -> Standing.FINAL;
    };
  }

  private static ReportedResult result(
      FhirElement element, ReportedSpecimen specimen, Standing standing) {
    List<String> units = units(element.first("valueQuantity"));
    return new ReportedResult(
        element.path(),
        codings(element),
        specimen,
        value(element),
        units.isEmpty() ? "" : units.getFirst(),
        standing,
        new Remarks(
            measuredAt(element),
            range(element),
            Stream.of(element.text("method", "text"), element.text("method", "coding", "display"))
                .filter(t -> !t.isEmpty())
                .findFirst(),
            Stream.of(
                    element.text("dataAbsentReason", "coding", "code"),
                    element.text("dataAbsentReason", "text"))
                .filter(t -> !t.isEmpty())
                .findFirst(),
            units));
  }

  private static Optional<Moment> measuredAt(FhirElement element) {
    return element.all("extension").stream()
        .filter(extension -> extension.text("url").equals(Coding.MEASURED_AT))
        .findFirst()
        .flatMap(extension -> FhirTime.parse(extension.text("valueDateTime")));
  }

  private static List<Coding> codings(FhirElement element) {
    List<Coding> codings = new ArrayList<>();
    for (FhirElement code : element.all("code")) {
      for (FhirElement coding : code.all("coding")) {
        String text = coding.text("display");
        codings.add(
            new Coding(
                coding.text("system"),
                coding.text("code"),
                text.isEmpty() ? code.text("text") : text));
      }
      if (codings.isEmpty() && !code.text("text").isEmpty()) {
        codings.add(new Coding("", "", code.text("text")));
      }
    }
    return codings;
  }

  /** The value as one text, with its comparator; empty when there is none. */
  private static String value(FhirElement element) {
    Optional<FhirElement> quantity = element.first("valueQuantity");
    if (quantity.isPresent()) {
      return quantity.get().text("value").isEmpty()
          ? ""
          : quantity.get().text("comparator") + quantity.get().text("value");
    }
    Optional<FhirElement> ratio = element.first("valueRatio");
    if (ratio.isPresent()) {
      return ratio.get().text("numerator", "value")
          + ":"
          + ratio.get().text("denominator", "value");
    }
    Optional<FhirElement> range = element.first("valueRange");
    if (range.isPresent()) {
      return range.get().text("low", "value") + "-" + range.get().text("high", "value");
    }
    return Stream.of(
            element.text("valueInteger"),
            element.text("valueString"),
            element.text("valueCodeableConcept", "text"),
            element.text("valueCodeableConcept", "coding", "display"),
            element.text("valueCodeableConcept", "coding", "code"),
            element.text("valueBoolean"),
            element.text("valueDateTime"),
            element.text("valueTime"))
        .filter(text -> !text.isEmpty())
        .findFirst()
        .orElse("");
  }

  /** Code and text of the unit of a quantity; the code first where it is one of UCUM. */
  private static List<String> units(Optional<FhirElement> quantity) {
    if (quantity.isEmpty()) {
      return List.of();
    }
    String code = quantity.get().text("code");
    String unit = quantity.get().text("unit");
    boolean isUcum = quantity.get().text("system").equals(UCUM);
    return Stream.of(isUcum ? code : unit, isUcum ? unit : code)
        .filter(text -> !text.isEmpty())
        .toList();
  }

  private static Optional<Range> range(FhirElement element) {
    Optional<FhirElement> range = element.first("referenceRange");
    if (range.isEmpty()) {
      return Optional.empty();
    }
    String low = range.get().text("low", "value");
    String high = range.get().text("high", "value");
    String text = range.get().text("text");
    String written =
        !text.isEmpty()
            ? text
            : low.isEmpty() ? "<" + high : high.isEmpty() ? ">" + low : low + "-" + high;
    List<String> units =
        text.isEmpty()
            ? Stream.of("low", "high")
                .flatMap(end -> units(range.get().first(end)).stream())
                .toList()
            : List.of();
    return Optional.of(new Range(range.get().path(), written, units))
        .filter(r -> r.text().length() > 1);
  }
}
