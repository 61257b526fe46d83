package cistern.clinic.casework;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.status.OpenCase;
import cistern.clinic.status.UnreadableCase;
import cistern.clinic.web.PageRequest;
import cistern.interpretation.Interpretation;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The punctures of one person; each of them is read by somebody, and the trail says so once. */
record Punctures(CaseContext context, PageRequest visit) {

  /** All that a person had, by the identifier in the cases. */
  List<OpenCase> of(String person) {
    return context.summaries().ofPerson(person).stream()
        .flatMap(id -> context.cases().find(id).stream())
        .flatMap(version -> opened(version).stream())
        .filter(o -> o.workup().panel().person().id().filter(person::equals).isPresent())
        .flatMap(o -> read(o).stream())
        .toList();
  }

  /** Those before a case that compare with it, the first first. */
  List<OpenCase> before(OpenCase open) {
    Optional<OffsetDateTime> drawn = drawn(open);
    Optional<String> person = open.workup().panel().person().id();
    if (drawn.isEmpty() || person.isEmpty()) {
      return List.of();
    }
    List<OpenCase> before =
        of(person.get()).stream()
            .filter(o -> !o.version().caseId().equals(open.version().caseId()))
            .filter(o -> drawn(o).filter(drawn.get()::isAfter).isPresent())
            .sorted(Comparator.comparing(o -> drawn(o).orElse(drawn.get())))
            .toList();
    List<Interpretation> all =
        Stream.concat(before.stream(), Stream.of(open)).map(OpenCase::interpretation).toList();
    boolean isRefused = context.medicine().repeats().refusal(all).isPresent();
    return isRefused ? List.of() : before;
  }

  private static Optional<OffsetDateTime> drawn(OpenCase open) {
    return open.workup().panel().csf().at();
  }

  /** The same, which the trail holds from now on; nothing when it is gone. */
  private Optional<OpenCase> read(OpenCase open) {
    String reader = visit.account().id();
    return context.cases().isRead(open.version(), reader)
            || context.cases().read(open.version().caseId(), reader).isPresent()
        ? Optional.of(open)
        : Optional.empty();
  }

  /** What a case says; one that the rules in force reject is compared with nothing. */
  private Optional<OpenCase> opened(CaseVersion version) {
    try {
      return Optional.of(context.recent().open(version));
    } catch (UnreadableCase e) {
      return Optional.empty();
    }
  }
}
