package cistern.exchange.hl7v2;

import cistern.exchange.lab.Moment;
import cistern.exchange.lab.ReportedPerson;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The person of a PID segment. */
final class PatientSegment {

  private PatientSegment() {}

  static ReportedPerson person(Segment pid) {
    List<String> ids = pid.repetitions(3);
    String best =
        ids.stream()
            .filter(id -> pid.component(id, 5).equals("MR"))
            .findFirst()
            .orElse(ids.getFirst());
    Optional<String> name =
        Stream.of(pid.component(5, 1), pid.component(5, 2))
            .filter(part -> !part.isEmpty())
            .reduce((family, given) -> family + ", " + given);
    return new ReportedPerson(
        pid.place(),
        Stream.of(pid.component(best, 1), pid.component(2, 1))
            .filter(id -> !id.isEmpty())
            .findFirst(),
        name,
        Hl7Time.parse(pid.component(7, 1), Optional.empty())
            .map(Moment::local)
            .map(time -> time.toLocalDate()),
        Optional.empty(),
        sex(pid.component(8, 1)));
  }

  private static Optional<String> sex(String code) {
    return switch (code) {
      case "F" -> Optional.of("female");
      case "M" -> Optional.of("male");
      case "", "U" -> Optional.empty();
      default -> Optional.of("other");
    };
  }

  /** Whether two segments name one person: the same identifier, or where none is, all the rest. */
  static boolean isSame(ReportedPerson one, ReportedPerson other) {
    return (one.id().isPresent() || other.id().isPresent())
        ? one.id().equals(other.id())
        : (one.name().equals(other.name()) && one.birthDate().equals(other.birthDate()));
  }
}
