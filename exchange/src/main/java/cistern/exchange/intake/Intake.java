package cistern.exchange.intake;

import cistern.exchange.fhir.FhirReader;
import cistern.exchange.hl7v2.Hl7Reader;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonDocument;
import cistern.exchange.lab.Coding;
import cistern.exchange.lab.Composed;
import cistern.exchange.lab.LabReport;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.WorkupComposer;
import cistern.exchange.table.MappingProposal;
import cistern.exchange.table.TableReader;
import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/** Reads work-ups out of whatever holds them; every carrier ends in the same reader of work-ups. */
public final class Intake {

  private final Facts facts;
  private final InputLimits limits;
  private final LocalMapping mapping;
  private final WorkupFile workups;

  private Intake(Facts facts, LocalMapping mapping) {
    this.facts = facts;
    this.limits = InputLimits.of(facts);
    this.mapping = mapping;
    this.workups = WorkupFile.of(facts);
  }

  /** An intake under some facts, with what a person confirmed of local codes and headings. */
  public static Intake of(Facts facts, LocalMapping mapping) {
    return new Intake(facts, mapping);
  }

  /**
   * Reads a file.
   *
   * @param file of any carrier
   * @param readings is given each work-up, and each reason why one cannot be read, in order
   */
  public void read(Path file, Consumer<WorkupReading> readings) {
    if (!Files.isRegularFile(file) || !Files.isReadable(file)) {
      readings.accept(workups.read(file));
      return;
    }
    try (InputStream in = Files.newInputStream(file)) {
      read(in, readings);
    } catch (IOException e) {
      readings.accept(notValid(InputTrouble.UNREADABLE, "the system refuses it"));
    }
  }

  /** Reads a stream to its end. */
  public void read(InputStream in, Consumer<WorkupReading> readings) {
    try {
      BufferedInputStream start = new BufferedInputStream(in);
      start.mark(Carrier.LENGTH);
      byte[] first = start.readNBytes(Carrier.LENGTH);
      start.reset();
      switch (Carrier.of(first)) {
        case JSON -> json(start, readings);
        case XML -> new Reports(readings).xml(start);
        case HL7V2 -> new Reports(readings).messages(start);
        case WORKBOOK -> new Reports(readings).table(start, true);
        case TEXT -> new Reports(readings).table(start, false);
        case OPAQUE ->
            readings.accept(
                notValid(InputTrouble.NOT_A_CARRIER, "copy the text out of it and give that"));
      }
    } catch (IOException e) {
      readings.accept(notValid(InputTrouble.UNREADABLE, "reading stopped before its end"));
    }
  }

  /**
   * A mapping for an input, to be confirmed by a person.
   *
   * @param file a table, or messages with local codes
   * @param problems is given every reason why there is none
   */
  public Optional<Json.Structure> propose(Path file, InputProblems problems) {
    try {
      byte[] bytes = Files.readAllBytes(file);
      Carrier carrier = Carrier.of(Arrays.copyOf(bytes, Math.min(bytes.length, Carrier.LENGTH)));
      MappingProposal proposal = MappingProposal.of(facts);
      if (carrier == Carrier.WORKBOOK || carrier == Carrier.TEXT) {
        return Optional.of(proposal.columns(bytes, carrier == Carrier.WORKBOOK, problems));
      }
      Set<Coding> unknown = new LinkedHashSet<>();
      WorkupComposer composer = WorkupComposer.of(facts, mapping);
      Consumer<LabReport> collected = report -> unknown.addAll(composer.unknown(report));
      InputStream in = new ByteArrayInputStream(bytes);
      if (carrier == Carrier.HL7V2) {
        Hl7Reader.of(limits).read(in, collected, p -> p.invalid().forEach(problems::add));
      } else if (carrier == Carrier.XML) {
        FhirReader.readXml(bytes, limits, problems).ifPresent(collected);
      } else {
        JsonDocument.read(in, limits, problems)
            .flatMap(resource -> FhirReader.read(resource, problems))
            .ifPresent(collected);
      }
      return Optional.of(proposal.codes(List.copyOf(unknown)));
    } catch (IOException e) {
      problems.add(InputProblem.of(InputTrouble.UNREADABLE, "", "the system refuses it"));
      return Optional.empty();
    }
  }

  private static WorkupReading notValid(InputTrouble trouble, String reason) {
    return new WorkupReading.NotValid(List.of(InputProblem.of(trouble, "", reason)));
  }

  private void json(InputStream in, Consumer<WorkupReading> readings) {
    InputProblems problems = new InputProblems();
    Optional<Json.Structure> document = JsonDocument.read(in, limits, problems);
    if (document.isEmpty()) {
      readings.accept(new WorkupReading.NotValid(problems.invalid()));
    } else if (document.get().members().containsKey("resourceType") && problems.isValid()) {
      new Reports(readings).resource(document.get());
    } else {
      readings.accept(workups.read(document.get(), problems));
    }
  }

  /** The reports of one input on their way to work-ups; loaded when the first report comes. */
  private final class Reports {

    private final Consumer<WorkupReading> readings;
    private WorkupComposer composer = WorkupComposer.of(facts, mapping);

    Reports(Consumer<WorkupReading> readings) {
      this.readings = readings;
    }

    void resource(Json.Structure resource) {
      InputProblems problems = new InputProblems();
      report(FhirReader.read(resource, problems), problems);
    }

    void xml(InputStream in) throws IOException {
      byte[] bytes = in.readNBytes(limits.bytes() + 1);
      InputProblems problems = new InputProblems();
      if (bytes.length > limits.bytes()) {
        problems.add(InputProblem.of(InputTrouble.TOO_LARGE, "", limits.mebibytes()));
        refuse(problems);
        return;
      }
      report(FhirReader.readXml(bytes, limits, problems), problems);
    }

    void table(InputStream in, boolean isWorkbook) throws IOException {
      byte[] bytes = in.readNBytes(limits.bytes() + 1);
      InputProblems problems = new InputProblems();
      if (bytes.length > limits.bytes()) {
        problems.add(InputProblem.of(InputTrouble.TOO_LARGE, "", limits.mebibytes()));
        refuse(problems);
        return;
      }
      TableReader reader = TableReader.of(facts, mapping);
      List<LabReport> reports =
          isWorkbook ? reader.readWorkbook(bytes, problems) : reader.readText(bytes, problems);
      if (!problems.isValid()) {
        refuse(problems);
      } else if (reports.isEmpty()) {
        readings.accept(workups.read(new ByteArrayInputStream(bytes)));
      } else {
        composer = WorkupComposer.of(facts, mapping.withPlainNumbers());
        reports.forEach(this::compose);
      }
    }

    void messages(InputStream in) {
      Hl7Reader.of(limits).read(in, this::compose, this::refuse);
    }

    private void report(Optional<LabReport> report, InputProblems problems) {
      if (report.isPresent() && problems.isValid()) {
        compose(report.get());
      } else {
        refuse(problems);
      }
    }

    private void refuse(InputProblems problems) {
      readings.accept(new WorkupReading.NotValid(problems.invalid()));
    }

    private void compose(LabReport report) {
      List<Composed> composed = composer.compose(report);
      if (composed.isEmpty()) {
        String first =
            composer.leftOver(report).stream()
                .filter(l -> l.why() != LeftOver.Why.HEADINGS)
                .findFirst()
                .map(l -> l.place() + " " + l.why().sentence())
                .orElse("it holds no result");
        readings.accept(
            new WorkupReading.NotValid(
                List.of(
                    InputProblem.of(
                        InputTrouble.NOTHING_UNDERSTOOD, report.person().place(), first))));
      }
      composed.forEach(each -> readings.accept(judged(each)));
    }

    /** Judged like any work-up; a problem names its place in the report first. */
    private WorkupReading judged(Composed composed) {
      return switch (workups.read(composed.document(), new InputProblems())) {
        case WorkupReading.Understood understood -> understood;
        case WorkupReading.NotValid notValid ->
            new WorkupReading.NotValid(
                notValid.problems().stream().map(p -> placed(p, composed)).toList());
      };
    }

    private static InputProblem placed(InputProblem problem, Composed composed) {
      return composed.places().entrySet().stream()
          .filter(e -> !e.getValue().isEmpty() && isPart(problem.place(), e.getKey()))
          .max(java.util.Comparator.comparingInt(e -> e.getKey().length()))
          .map(
              e ->
                  new InputProblem(
                      problem.trouble(),
                      e.getValue() + ", as " + problem.place(),
                      explained(problem.text(), composed)))
          .orElse(problem);
    }

    private static boolean isPart(String place, String of) {
      return place.equals(of) || place.startsWith(of + ".") || place.startsWith(of + "[");
    }

    /** A sentence that names another result says where that one stood as well. */
    private static String explained(String text, Composed composed) {
      return composed.places().entrySet().stream()
          .filter(e -> text.contains(e.getKey() + ".") && e.getKey().startsWith("results["))
          .findFirst()
          .map(e -> text.replace(e.getKey(), e.getKey() + " (" + e.getValue() + ")"))
          .orElse(text);
    }
  }
}
