package cistern.exchange.hl7v2;

import cistern.exchange.lab.Moment;
import cistern.exchange.lab.ReportedPerson;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The person of a PID segment.
 *
 * @param person as the report names them
 * @param authority who gave the identifier; empty when that is not said
 */
record PatientSegment(ReportedPerson person, String authority) {

  static PatientSegment of(Segment pid) {
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
    ReportedPerson person =
        new ReportedPerson(
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
    return new PatientSegment(person, pid.component(best, 4));
  }

  private static Optional<String> sex(String code) {
    return switch (code) {
      case "F" -> Optional.of("female");
      case "M" -> Optional.of("male");
      case "", "U" -> Optional.empty();
      default -> Optional.of("other");
    };
  }

  /**
   * Whether two segments name one person: the same identifier by the same authority and nothing
   * against it, or where no identifier is, all the rest.
   */
  boolean isSame(PatientSegment other) {
    if (person.id().isEmpty() && other.person.id().isEmpty()) {
      return person.name().equals(other.person.name())
          && person.birthDate().equals(other.person.birthDate());
    }
    boolean isOneAuthority =
        authority.isEmpty() || other.authority.isEmpty() || authority.equals(other.authority);
    return person.id().equals(other.person.id())
        && isOneAuthority
        && !person.isAgainst(other.person);
  }
}
