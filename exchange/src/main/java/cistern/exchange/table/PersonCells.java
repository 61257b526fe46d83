package cistern.exchange.table;

import cistern.exchange.lab.DecimalMark;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.Moment;
import cistern.exchange.lab.NumberText;
import cistern.exchange.lab.ReportedPerson;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The fields of a person and of the draws, as cells hold them.
 *
 * @param fields the text by the name of the field
 * @param place where they stand
 * @param mapping how dates are written
 * @param notes where a date that can be read in two ways is noted
 */
record PersonCells(
    Map<String, String> fields, String place, LocalMapping mapping, List<LeftOver> notes) {

  ReportedPerson person() {
    return new ReportedPerson(
        place,
        text("person.id"),
        text("name"),
        text("birthDate").flatMap(this::time).map(m -> m.local().toLocalDate()),
        text("ageYears").flatMap(PersonCells::years),
        text("sex").map(PersonCells::sex));
  }

  Optional<String> text(String field) {
    return Optional.ofNullable(fields.get(field)).filter(text -> !text.isBlank());
  }

  /** When a fluid was taken: by its own field, else by the one of the row. */
  Optional<Moment> at(String fluid) {
    return text(fluid + ".at").or(() -> text("at")).flatMap(this::time);
  }

  private Optional<Moment> time(String text) {
    Optional<Moment> time = TableTime.parse(text, mapping.dates());
    if (time.isEmpty()) {
      LeftOver note = new LeftOver(place, Why.DATE_UNCLEAR, "", text, "");
      if (!notes.contains(note)) {
        notes.add(note);
      }
    }
    return time;
  }

  private static Optional<String> years(String text) {
    return NumberText.parse(text, DecimalMark.UNTOLD)
        .filter(n -> n.kind() == NumberText.Kind.VALUE)
        .filter(n -> n.rest().matches("(?i)|y|yr|yrs|years?|a|j|jahre|ans"))
        .map(NumberText::literal);
  }

  private static String sex(String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "f", "w", "female", "weiblich", "woman", "femme", "feminin", "mujer" -> "female";
      case "m", "male", "männlich", "man", "homme", "masculin", "hombre" -> "male";
      default -> text.strip();
    };
  }
}
