package cistern.clinic.status;

import cistern.exchange.json.Json;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Who a case is about, as the file says it.
 *
 * @param id the local identifier
 * @param name of the person, where a laboratory sent it
 * @param birthDate as sent
 * @param ageYears as written
 * @param sex as written
 */
public record Identity(
    Optional<String> id,
    Optional<String> name,
    Optional<String> birthDate,
    Optional<String> ageYears,
    Optional<String> sex) {

  private static final String PERSON = "person";

  /** The person of a work-up file. */
  public static Identity of(Json.Structure file) {
    Optional<Json.Structure> person =
        file.members().get(PERSON) instanceof Json.Structure structure
            ? Optional.of(structure)
            : Optional.empty();
    return new Identity(
        member(person, "id"),
        member(person, "name"),
        member(person, "birthDate"),
        member(person, "ageYears"),
        member(person, "sex"));
  }

  private static Optional<String> member(Optional<Json.Structure> person, String name) {
    return person.flatMap(
        p ->
            switch (p.members().get(name)) {
              case Json.Text text when !text.value().isBlank() -> Optional.of(text.value().strip());
              case Json.Numeral numeral -> Optional.of(numeral.literal());
              case null, default -> Optional.empty();
            });
  }

  /** Everything known on one line; a person without an identifier is said to have none. */
  public String toText() {
    return Stream.of(
            name,
            Optional.of(id.map(i -> "identifier " + i).orElse("no identifier")),
            birthDate.map(d -> "born " + d),
            ageYears.map(a -> a + " years"),
            sex)
        .flatMap(Optional::stream)
        .collect(Collectors.joining(" · "));
  }

  /**
   * Why this is another person than one of a case, in a sentence; empty when nothing that both name
   * differs.
   */
  public Optional<String> differenceFrom(Identity known) {
    return Stream.of(
            difference("identifier", id, known.id),
            difference("date of birth", birthDate, known.birthDate),
            difference("sex", sex, known.sex),
            isSameId(known)
                ? Optional.<String>empty()
                : difference("name", plain(name), plain(known.name)))
        .flatMap(Optional::stream)
        .findFirst();
  }

  /** A name changes in a life; an identifier does not. */
  private boolean isSameId(Identity known) {
    return id.isPresent() && id.equals(known.id);
  }

  /** A name as its letters, however they are set. */
  private static Optional<String> plain(Optional<String> name) {
    return name.map(n -> n.replaceAll("[^\\p{L}]+", " ").strip());
  }

  private static Optional<String> difference(
      String what, Optional<String> one, Optional<String> other) {
    boolean isOther =
        one.isPresent() && other.isPresent() && !one.get().equalsIgnoreCase(other.get());
    return isOther
        ? Optional.of("the " + what + " is " + one.get() + ", that of this case " + other.get())
        : Optional.empty();
  }
}
