package cistern.exchange.deidentified;

import cistern.exchange.deidentified.SafeValues.Subject;
import cistern.exchange.json.Json;
import cistern.exchange.lab.SentWorkup;
import cistern.fact.Facts;
import cistern.panel.Person;
import cistern.puncture.drug.Drugs;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SequencedMap;
import java.util.stream.DoubleStream;

/**
 * Leaves out of work-ups what names their person. Only what a table allows is kept, so that a field
 * that nobody thought of is left out.
 */
public final class Deidentification {

  /** The field of a work-up that says that ids and dates are not the true ones. */
  public static final String FIELD = "deidentified";

  private final SiteSecret secret;
  private final KeptFields kept = KeptFields.read();
  private final Facts facts;
  private final Drugs drugs;

  private Deidentification(SiteSecret secret, Facts facts) {
    this.secret = secret;
    this.facts = facts;
    this.drugs = Drugs.of(facts);
  }

  /** A de-identification under the secret of a site. */
  public static Deidentification of(SiteSecret secret, Facts facts) {
    return new Deidentification(secret, facts);
  }

  /** The safe form of a valid work-up. */
  public Deidentified of(Json.Structure workup) {
    SentWorkup said = new SentWorkup(workup, facts);
    Optional<String> person = said.text("person", "id").map(String::strip);
    OptionalDouble born = sinceBirth(said);
    double most = facts.number("deidentify.age.upper");
    boolean isOld = DoubleStream.concat(born.stream(), stated(said)).anyMatch(age -> age > most);
    Subject subject = new Subject(person.orElse("workup " + said.id()), isOld, born.isPresent());
    FieldPass pass = new FieldPass(kept, new SafeValues(secret, drugs, subject));
    SequencedMap<String, Json> members = new LinkedHashMap<>(pass.over(workup).members());
    members.put(FIELD, new Json.Truth(true));
    if (isOld && members.get("person") instanceof Json.Structure(SequencedMap<String, Json> rest)) {
      SequencedMap<String, Json> grouped = new LinkedHashMap<>(rest);
      grouped.put("ageYears", new Json.Numeral(Integer.toString((int) most + 1)));
      members.put("person", new Json.Structure(grouped));
    }
    return new Deidentified(new Json.Structure(members), pass.leftOut(), person.isPresent());
  }

  /** Ages as stated, in years. */
  private static DoubleStream stated(SentWorkup said) {
    return DoubleStream.concat(
        said.text("person", "ageYears").stream().mapToDouble(Double::parseDouble),
        said.text("person", "ageDays").stream()
            .mapToDouble(days -> Double.parseDouble(days) / Person.DAYS_IN_YEAR));
  }

  /** The age at the draw by the day of birth, in whole years. */
  private static OptionalDouble sinceBirth(SentWorkup said) {
    Optional<OffsetDateTime> drawn = said.time("draws", "csf", "at");
    try {
      Optional<LocalDate> birth = said.text("person", "birthDate").map(LocalDate::parse);
      return drawn
          .or(() -> said.time("draws", "serum", "at"))
          .flatMap(at -> birth.map(b -> ChronoUnit.YEARS.between(b, at.toLocalDate())))
          .stream()
          .mapToDouble(Long::doubleValue)
          .findFirst();
    } catch (DateTimeException noDay) {
      return OptionalDouble.empty();
    }
  }
}
