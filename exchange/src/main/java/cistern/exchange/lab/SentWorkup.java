package cistern.exchange.lab;

import cistern.exchange.json.IsoTime;
import cistern.exchange.json.Json;
import cistern.fact.Facts;
import cistern.measurement.Compartment;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A valid work-up as it is sent: what its file holds, digit by digit.
 *
 * @param document the whole work-up
 * @param facts in force, which say which codes are written
 */
public record SentWorkup(Json.Structure document, Facts facts) {

  private static final List<String> BANDS =
      List.of("csfOnly", "shared", "serumOnly", "pattern", "result");

  /** The id. */
  public String id() {
    return text("id").orElse("");
  }

  /** Whether the data are invented. */
  public boolean isInvented() {
    return isTrue("invented");
  }

  /** Whether ids and dates are not the true ones. */
  public boolean isDeidentified() {
    return isTrue("deidentified");
  }

  private boolean isTrue(String name) {
    return find(name).filter(v -> v instanceof Json.Truth(boolean is) && is).isPresent();
  }

  /** A text or number at a path of names. */
  public Optional<String> text(String... names) {
    return find(names).flatMap(SentWorkup::plain);
  }

  private Optional<Json> find(String... names) {
    Optional<Json> found = Optional.of(document);
    for (String name : names) {
      found =
          found
              .filter(Json.Structure.class::isInstance)
              .map(Json.Structure.class::cast)
              .flatMap(s -> Optional.ofNullable(s.members().get(name)));
    }
    return found;
  }

  private static Optional<String> plain(Json json) {
    return switch (json) {
      case Json.Text text -> Optional.of(text.value());
      case Json.Numeral numeral -> Optional.of(numeral.literal());
      case Json.Structure structure -> Optional.empty();
      case Json.Sequence sequence -> Optional.empty();
      case Json.Truth truth -> Optional.empty();
      case Json.Nothing nothing -> Optional.empty();
      case Json.NotJson notJson -> Optional.empty();
    };
  }

  /** A time at a path of names. */
  public Optional<OffsetDateTime> time(String... names) {
    return text(names).flatMap(IsoTime::parse);
  }

  /** The day of birth, or its month or year; empty when what is written is neither. */
  public Optional<String> birthDate() {
    return text("person", "birthDate").filter(SentWorkup::isDay);
  }

  private static boolean isDay(String text) {
    try {
      String first = text.matches("\\d{4}(-\\d{2}){0,2}") ? text + "-01-01" : "";
      return first.length() > 0 && LocalDate.parse(first.substring(0, 10)).getYear() > 0;
    } catch (DateTimeException noSuchDay) {
      return false;
    }
  }

  /** The latest time of the draws, which the message is dated by; the same on every run. */
  public Optional<OffsetDateTime> latest() {
    return Stream.of("csf", "serum")
        .flatMap(f -> Stream.of("at", "receivedAt").flatMap(t -> time("draws", f, t).stream()))
        .max(Comparator.naturalOrder());
  }

  /** The results measured in a fluid, in the order of the file. */
  public List<SentResult> results(Compartment fluid) {
    List<SentResult> results = new ArrayList<>();
    if (find("results").orElse(new Json.Nothing()) instanceof Json.Sequence(List<Json> items)) {
      for (Json item : items) {
        if (item instanceof Json.Structure result) {
          SentWorkup one = new SentWorkup(result, facts);
          if (one.text("in").filter(fluid.code()::equals).isPresent()) {
            results.add(SentResult.of(one));
          }
        }
      }
    }
    if (fluid == Compartment.CSF) {
      BANDS.forEach(name -> text("bands", name).ifPresent(v -> results.add(band(name, v))));
    }
    return results;
  }

  private SentResult band(String name, String value) {
    boolean isCount = name.endsWith("Only") || name.equals("shared");
    return new SentResult(
        "bands." + name,
        "oligoclonal bands, " + name,
        Loinc.toWrite("bands." + name, facts),
        "",
        value,
        isCount ? "{bands}" : "",
        new SentResult.Beside(
            "final", Optional.empty(), text("bands", "method"), Optional.empty()));
  }
}
