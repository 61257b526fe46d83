package cistern.exchange.fhir;

import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.lab.LabReport;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.Moment;
import cistern.exchange.lab.ReportedPerson;
import cistern.exchange.lab.ReportedResult;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Reads a laboratory report of one person: a Bundle of any type, or a DiagnosticReport or
 * Observation with what it contains.
 */
public final class FhirReader {

  private FhirReader() {}

  /** The report of a resource in JSON; empty, with a problem noted, when it cannot be read. */
  public static Optional<LabReport> read(Json.Structure resource, InputProblems problems) {
    FhirElement root = new FhirElement(resource, type(resource));
    Resources resources = Resources.of(root, problems);
    List<FhirElement> observations = resources.of("Observation");
    List<FhirElement> reports = resources.of("DiagnosticReport");
    Optional<ReportedPerson> person = person(resources, observations, reports, problems);
    if (observations.isEmpty() && reports.isEmpty()) {
      problems.add(
          InputProblem.of(
              InputTrouble.NOT_A_REPORT,
              root.path(),
              "it has no Observation and no DiagnosticReport"));
    }
    if (!problems.isValid()) {
      return Optional.empty();
    }
    ObservationResult reader = new ObservationResult(resources);
    Map<String, FhirElement> reportOf = reportOf(reports, resources);
    List<ReportedResult> results = new ArrayList<>();
    for (FhirElement observation : observations) {
      results.addAll(
          reader.read(observation, Optional.ofNullable(reportOf.get(observation.path()))));
    }
    return Optional.of(
        new LabReport(
            "fhir",
            id(root, reports),
            isInvented(root, reports),
            person.orElse(ReportedPerson.UNKNOWN),
            results,
            Stream.concat(
                    notes(observations, reports).stream(),
                    unclearTimes(observations, resources.of("Specimen")).stream())
                .toList()));
  }

  /** The report of a resource in XML. */
  public static Optional<LabReport> readXml(
      byte[] bytes, InputLimits limits, InputProblems problems) {
    return FhirXml.read(bytes, limits, problems).flatMap(resource -> read(resource, problems));
  }

  private static String type(Json.Structure resource) {
    return new FhirElement(resource, "").type();
  }

  private static Optional<String> id(FhirElement root, List<FhirElement> reports) {
    Optional<FhirElement> report = reports.stream().findFirst();
    return Stream.of(
            report.map(r -> r.text("identifier", "value")).orElse(""),
            root.text("identifier", "value"),
            report.map(r -> r.text("id")).orElse(""),
            root.text("id"))
        .filter(text -> !text.isEmpty())
        .findFirst();
  }

  /** Whether the bundle or its report is labelled as test health data. */
  private static boolean isInvented(FhirElement root, List<FhirElement> reports) {
    return Stream.concat(Stream.of(root), reports.stream())
        .flatMap(resource -> resource.first("meta").stream())
        .flatMap(meta -> meta.all("security").stream())
        .anyMatch(label -> label.text("code").equals("HTEST"));
  }

  /** The first report that names an observation, by the path of the observation. */
  private static Map<String, FhirElement> reportOf(List<FhirElement> reports, Resources resources) {
    Map<String, FhirElement> reportOf = new HashMap<>();
    for (FhirElement report : reports) {
      for (FhirElement result : report.all("result")) {
        resources.resolve(result).ifPresent(found -> reportOf.putIfAbsent(found.path(), report));
      }
    }
    return reportOf;
  }

  /** What the laboratory wrote beside the results: kept, never read as a result. */
  private static List<LeftOver> notes(List<FhirElement> observations, List<FhirElement> reports) {
    List<LeftOver> notes = new ArrayList<>();
    for (FhirElement resource : Stream.concat(reports.stream(), observations.stream()).toList()) {
      note(notes, resource.path() + ".conclusion", resource.text("conclusion"));
      resource.all("note").forEach(n -> note(notes, n.path(), n.text("text")));
    }
    return notes;
  }

  /** The times that cannot be read, such as one of which only the month is known. */
  private static List<LeftOver> unclearTimes(
      List<FhirElement> observations, List<FhirElement> specimens) {
    List<Optional<FhirElement>> times = new ArrayList<>();
    for (FhirElement observation : observations) {
      times.add(observation.first("effectiveDateTime"));
      times.add(observation.at("effectivePeriod", "start"));
    }
    for (FhirElement specimen : specimens) {
      times.add(specimen.at("collection", "collectedDateTime"));
      times.add(specimen.at("collection", "collectedPeriod", "start"));
      times.add(specimen.first("receivedTime"));
    }
    // Most observations of a report have one time.
    Map<String, Boolean> isUnclear = new HashMap<>();
    return times.stream()
        .flatMap(Optional::stream)
        .filter(t -> !t.text().isEmpty())
        .filter(t -> isUnclear.computeIfAbsent(t.text(), x -> FhirTime.parse(x).isEmpty()))
        .map(t -> new LeftOver(t.path(), Why.TIME_UNCLEAR, "", t.text(), ""))
        .toList();
  }

  private static void note(List<LeftOver> notes, String path, String text) {
    if (!text.isEmpty()) {
      notes.add(new LeftOver(path, Why.NOTE, "", text, ""));
    }
  }

  private static Optional<ReportedPerson> person(
      Resources resources,
      List<FhirElement> observations,
      List<FhirElement> reports,
      InputProblems problems) {
    List<FhirElement> patients = resources.of("Patient");
    Optional<FhirElement> other =
        patients.stream().skip(1).filter(p -> !isSame(patients.getFirst(), p)).findFirst();
    if (other.isPresent()) {
      problems.add(
          InputProblem.of(
              InputTrouble.TWO_PERSONS, other.get().path(), patients.getFirst().path()));
      return Optional.empty();
    }
    checkSubjects(
        Stream.concat(observations.stream(), reports.stream()).toList(), resources, problems);
    return patients.isEmpty()
        ? onlyNamed(observations)
        : patients.stream().map(FhirReader::person).findFirst();
  }

  /** Every subject is the same, and is the patient when there is one. */
  private static void checkSubjects(
      List<FhirElement> all, Resources resources, InputProblems problems) {
    Optional<FhirElement> first = Optional.empty();
    boolean isPatientThere = !resources.of("Patient").isEmpty();
    for (FhirElement resource : all) {
      Optional<FhirElement> subject = resource.first("subject");
      if (subject.isEmpty()) {
        continue;
      }
      if (first.isEmpty()) {
        first = subject;
      } else if (!isSame(first.get(), subject.get(), resources)) {
        problems.add(
            InputProblem.of(InputTrouble.TWO_PERSONS, subject.get().path(), first.get().path()));
        return;
      }
      boolean isStranger = isPatientThere && resources.resolve(subject.get()).isEmpty();
      if (isStranger && !subject.get().text("reference").isEmpty()) {
        problems.add(InputProblem.of(InputTrouble.NO_PERSON, subject.get().path()));
        return;
      }
    }
  }

  private static boolean isSame(FhirElement one, FhirElement other, Resources resources) {
    Optional<FhirElement> first = resources.resolve(one);
    Optional<FhirElement> second = resources.resolve(other);
    Set<String> names = new LinkedHashSet<>();
    for (FhirElement subject : List.of(one, other)) {
      names.add(
          Stream.of(
                  subject.text("reference"),
                  subject.text("identifier", "value"),
                  subject.text("display"))
              .filter(t -> !t.isEmpty())
              .findFirst()
              .orElse(""));
    }
    boolean areHeld = first.isPresent() && second.isPresent();
    if (!areHeld) {
      return names.size() == 1;
    }
    return first.get().path().equals(second.get().path()) || isSame(first.get(), second.get());
  }

  /** Whether two patients are one that each observation contains for itself. */
  private static boolean isSame(FhirElement one, FhirElement other) {
    return Stream.of(one, other).allMatch(patient -> patient.path().contains(".contained["))
        && !one.text("identifier", "value").isEmpty()
        && one.text("identifier", "value").equals(other.text("identifier", "value"))
        && one.text("identifier", "system").equals(other.text("identifier", "system"))
        && !person(one).isAgainst(person(other));
  }

  private static Optional<ReportedPerson> onlyNamed(List<FhirElement> observations) {
    return observations.stream()
        .flatMap(o -> o.first("subject").stream())
        .map(FhirReader::named)
        .findFirst();
  }

  private static ReportedPerson named(FhirElement subject) {
    String reference = subject.text("reference").replaceFirst("^.*/", "");
    Optional<String> id =
        Stream.of(subject.text("identifier", "value"), reference)
            .filter(t -> !t.isEmpty())
            .findFirst();
    return new ReportedPerson(
        subject.path(),
        id,
        Optional.of(subject.text("display")).filter(t -> !t.isEmpty()),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static ReportedPerson person(FhirElement patient) {
    Optional<String> id =
        Stream.concat(
                patient.all("identifier").stream().map(i -> i.text("value")),
                Stream.of(patient.text("id")))
            .filter(t -> !t.isEmpty())
            .findFirst();
    Optional<String> name =
        Stream.of(patient.text("name", "family"), given(patient))
            .filter(t -> !t.isEmpty())
            .reduce((family, first) -> family + ", " + first)
            .or(() -> Optional.of(patient.text("name", "text")).filter(t -> !t.isEmpty()));
    Optional<LocalDate> birth =
        FhirTime.parse(patient.text("birthDate"))
            .filter(Moment::isDayOnly)
            .map(moment -> moment.local().toLocalDate());
    Optional<String> sex =
        Optional.of(patient.text("gender")).filter(s -> !s.isEmpty() && !s.equals("unknown"));
    return new ReportedPerson(patient.path(), id, name, birth, Optional.empty(), sex);
  }

  private static String given(FhirElement patient) {
    return String.join(
        " ",
        patient.first("name").map(n -> n.all("given")).orElse(List.of()).stream()
            .map(g -> g.text())
            .toList());
  }
}
