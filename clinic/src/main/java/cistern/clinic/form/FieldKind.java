package cistern.clinic.form;

import cistern.exchange.json.Json;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** What is typed into a field, and what it is in a work-up file. */
enum FieldKind {
  /** A line of text. */
  TEXT,
  /** Lines of text. */
  LINES,
  /** A number as it is printed; what is none goes into the file as text, and is reported there. */
  NUMBER,
  /** A date and time in the clinic's own time. */
  TIME,
  /** Yes, no or unknown. */
  ANSWER,
  /** One of some words. */
  CHOICE;

  private static final Pattern NUMERAL =
      Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?([eE][+-]?\\d+)?");
  private static final DateTimeFormatter READ =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.UK);
  private static final DateTimeFormatter LOCAL = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");

  /** What stands in the field for a value of the file. */
  String toTyped(Json json, ZoneId zone) {
    return switch (json) {
      case Json.Text text -> this == TIME ? local(text.value(), zone) : text.value();
      case Json.Numeral numeral -> numeral.literal();
      case Json.Truth truth -> Boolean.toString(truth.value());
      case Json.Structure structure -> "";
      case Json.Sequence sequence -> "";
      case Json.Nothing nothing -> "";
      case Json.NotJson notJson -> "";
    };
  }

  /** What is typed, as a value for the file; nothing for an empty field. */
  Optional<Json> toJson(String typed, ZoneId zone) {
    if (typed.isBlank()) {
      return Optional.empty();
    }
    return Optional.of(
        switch (this) {
          case TEXT, LINES, ANSWER, CHOICE -> new Json.Text(typed);
          case NUMBER ->
              NUMERAL.matcher(typed).matches() ? new Json.Numeral(typed) : new Json.Text(typed);
          case TIME -> new Json.Text(withOffset(typed, zone));
        });
  }

  /** A time in its field as people read it. */
  static String inWords(String typed) {
    try {
      return READ.format(LocalDateTime.parse(typed));
    } catch (DateTimeParseException e) {
      return typed;
    }
  }

  private static String local(String time, ZoneId zone) {
    try {
      return LOCAL.format(OffsetDateTime.parse(time).atZoneSameInstant(zone));
    } catch (DateTimeParseException e) {
      return time;
    }
  }

  private static String withOffset(String typed, ZoneId zone) {
    try {
      return LocalDateTime.parse(typed).atZone(zone).toOffsetDateTime().toString();
    } catch (DateTimeParseException e) {
      return typed;
    }
  }
}
