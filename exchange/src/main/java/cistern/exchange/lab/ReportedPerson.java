package cistern.exchange.lab;

import java.time.LocalDate;
import java.util.Optional;

/**
 * The person of a report.
 *
 * @param place where the report names them
 * @param id the local identifier
 * @param name as written, family name first
 * @param birthDate the day of birth
 * @param ageYears the age as written, in years
 * @param sex {@code female}, {@code male} or as written
 */
public record ReportedPerson(
    String place,
    Optional<String> id,
    Optional<String> name,
    Optional<LocalDate> birthDate,
    Optional<String> ageYears,
    Optional<String> sex) {

  /** Nobody is named. */
  public static final ReportedPerson UNKNOWN =
      new ReportedPerson(
          "",
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  /**
   * Whether something that is said of both differs: the day of birth or, where that is not said of
   * both, the name.
   */
  public boolean isAgainst(ReportedPerson other) {
    if (birthDate.isPresent() && other.birthDate.isPresent()) {
      return !birthDate.equals(other.birthDate);
    }
    return name.isPresent()
        && other.name.isPresent()
        && !name.get().equalsIgnoreCase(other.name.get());
  }
}
