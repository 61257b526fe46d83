package cistern.exchange.hl7v2;

import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.lab.LabReport;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.ReportedPerson;
import cistern.exchange.lab.ReportedResult;
import cistern.exchange.lab.ReportedResult.Standing;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * Reads result messages, one after another. Messages of the same person that follow each other are
 * one report, so that CSF and serum that were sent apart meet, and a correction replaces.
 */
public final class Hl7Reader {

  private final InputLimits limits;

  private Hl7Reader(InputLimits limits) {
    this.limits = limits;
  }

  /** A reader under some limits, which hold for each message. */
  public static Hl7Reader of(InputLimits limits) {
    return new Hl7Reader(limits);
  }

  /**
   * Reads a stream to its end.
   *
   * @param in of any length; one message is held at a time
   * @param reports is given each report as it is complete
   * @param refused is given the problems of each message that cannot be read
   */
  public void read(InputStream in, Consumer<LabReport> reports, Consumer<InputProblems> refused) {
    MessageText messages = new MessageText(in, limits);
    Optional<LabReport> waiting = Optional.empty();
    Optional<PatientSegment> person = Optional.empty();
    InputProblems problems = new InputProblems();
    try {
      Optional<MessageText.Message> message = messages.next(problems);
      boolean isAny = message.isPresent();
      while (message.isPresent()) {
        InputProblems own = new InputProblems();
        MessageReport reader = new MessageReport(own);
        Optional<LabReport> report = reader.read(message.get());
        if (report.isEmpty() || !own.isValid()) {
          refused.accept(own);
        } else if (waiting.isPresent() && isSamePerson(person, reader.person)) {
          waiting = Optional.of(together(waiting.get(), report.get()));
        } else {
          waiting.ifPresent(reports);
          waiting = report;
          person = reader.person;
        }
        message = messages.next(problems);
      }
      if (!isAny && problems.isValid()) {
        problems.add(InputProblem.of(InputTrouble.SEGMENT_MISSING, "", "MSH"));
      }
    } catch (IOException e) {
      problems.add(InputProblem.of(InputTrouble.UNREADABLE, "", "reading stopped before its end"));
    }
    waiting.ifPresent(reports);
    if (!problems.isValid()) {
      refused.accept(problems);
    }
  }

  /** Whether two messages are of one person, who has an identifier and one day of birth or none. */
  private static boolean isSamePerson(
      Optional<PatientSegment> one, Optional<PatientSegment> other) {
    return one.isPresent()
        && other.isPresent()
        && one.get().person().id().isPresent()
        && one.get().isSame(other.get())
        && one.get().person().birthDate().equals(other.get().person().birthDate());
  }

  private static LabReport together(LabReport one, LabReport other) {
    return new LabReport(
        one.carrier(),
        one.id(),
        one.isInvented() || other.isInvented(),
        one.person(),
        withdrawn(both(one.results(), other.results())),
        both(one.leftOver(), other.leftOver()));
  }

  /** The results; one that a later segment of the same observation cancels is cancelled too. */
  private static List<ReportedResult> withdrawn(List<ReportedResult> results) {
    if (results.stream().noneMatch(result -> result.standing() == Standing.CANCELLED)) {
      return results;
    }
    List<ReportedResult> standing = new ArrayList<>(results);
    Map<String, List<ReportedResult>> cancelled = new HashMap<>();
    for (int i = results.size() - 1; i >= 0; i--) {
      ReportedResult result = results.get(i);
      List<ReportedResult> later = cancelled.getOrDefault(result.code(), List.of());
      if (later.stream().anyMatch(result::isOfSameDraw)) {
        standing.set(i, result.in(Standing.CANCELLED));
      } else if (result.standing() == Standing.CANCELLED) {
        cancelled.computeIfAbsent(result.code(), code -> new ArrayList<>()).add(result);
      }
    }
    return standing;
  }

  private static <T> List<T> both(List<T> one, List<T> other) {
    return Stream.concat(one.stream(), other.stream()).toList();
  }

  /** One message on its way to a report. */
  private static final class MessageReport {

    private static final List<String> BESIDE =
        List.of(
            "MSH", "SFT", "PD1", "NK1", "PV1", "PV2", "ORC", "TQ1", "TQ2", "CTD", "FT1", "CTI",
            "DSC", "PRT", "SAC", "INV", "ARV", "UAC", "EVN", "BTS", "FTS", "MSA", "QRD", "PID");

    private final InputProblems problems;
    private final List<LeftOver> leftOver = new ArrayList<>();
    private final List<OrderGroup> orders = new ArrayList<>();
    private Optional<PatientSegment> person = Optional.empty();
    private Optional<Segment> firstOrder = Optional.empty();

    MessageReport(InputProblems problems) {
      this.problems = problems;
    }

    Optional<LabReport> read(MessageText.Message message) {
      String header = message.lines().getFirst();
      String at = "MSH (line " + message.firstLine() + ")";
      Optional<Delimiters> delimiters =
          header.startsWith("MSH") ? Delimiters.of(header) : Optional.empty();
      if (delimiters.isEmpty()) {
        InputTrouble trouble =
            header.startsWith("MSH") ? InputTrouble.DELIMITERS : InputTrouble.SEGMENT_MISSING;
        problems.add(InputProblem.of(trouble, at, "MSH"));
        return Optional.empty();
      }
      Segment msh = Segment.of(header, message.firstLine(), delimiters.get());
      String type = msh.component(9, 1);
      if (!type.equals("ORU")) {
        problems.add(
            InputProblem.of(
                InputTrouble.NOT_A_REPORT, msh.place(9), "the message is of another type"));
        return Optional.empty();
      }
      checkStructure(msh);
      if (message.isAssumed()) {
        leftOver.add(new LeftOver(msh.place(18), Why.ENCODING, "", "", ""));
      }
      for (int i = 1; i < message.lines().size(); i++) {
        take(Segment.of(message.lines().get(i), message.firstLine() + i, delimiters.get()), msh);
      }
      return Optional.of(report(msh));
    }

    private void checkStructure(Segment msh) {
      String structure = msh.component(9, 3);
      if (!structure.isEmpty() && !structure.equals("ORU_R01")) {
        leftOver.add(new LeftOver(msh.place(9), Why.NOT_A_RESULT, structure, "", ""));
      }
    }

    private void take(Segment segment, Segment msh) {
      switch (segment.name()) {
        case "PID" -> name(segment);
        case "OBR" -> {
          orders.add(new OrderGroup(Optional.of(segment), Hl7Time.offset(msh.component(7, 1))));
          firstOrder = firstOrder.or(() -> Optional.of(segment));
        }
        case "OBX", "SPM" -> {
          if (orders.isEmpty()) {
            orders.add(new OrderGroup(Optional.empty(), Hl7Time.offset(msh.component(7, 1))));
          }
          orders.getLast().add(segment);
        }
        case "NTE" -> {
          if (orders.isEmpty() || !orders.getLast().takesDigits(segment)) {
            leftOver.add(new LeftOver(segment.place(3), Why.NOTE, "", segment.text(3), ""));
          }
        }
        default -> {
          if (!BESIDE.contains(segment.name()) && !String.join("", segment.fields()).isBlank()) {
            leftOver.add(new LeftOver(segment.place(), Why.NOT_A_RESULT, shown(segment), "", ""));
          }
        }
      }
    }

    private static String shown(Segment segment) {
      return segment.name().matches("[A-Z][A-Z0-9]{2}") ? segment.name() : "";
    }

    private void name(Segment pid) {
      PatientSegment named = PatientSegment.of(pid);
      if (person.isPresent() && !person.get().isSame(named)) {
        problems.add(
            InputProblem.of(InputTrouble.TWO_PERSONS, pid.place(), person.get().person().place()));
      }
      person = person.or(() -> Optional.of(named));
    }

    private LabReport report(Segment msh) {
      List<ReportedResult> results =
          withdrawn(orders.stream().flatMap(order -> order.results().stream()).toList());
      Optional<String> id =
          Stream.of(
                  firstOrder.map(o -> o.component(3, 1)).orElse(""),
                  firstOrder.map(o -> o.component(2, 1)).orElse(""),
                  msh.component(10, 1))
              .filter(text -> !text.isEmpty())
              .findFirst();
      orders.forEach(order -> leftOver.addAll(order.unclearTimes()));
      return new LabReport(
          "hl7v2",
          id,
          List.of("T", "D").contains(msh.component(11, 1)),
          person.map(PatientSegment::person).orElse(ReportedPerson.UNKNOWN),
          results,
          leftOver);
    }
  }
}
