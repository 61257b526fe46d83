package cistern.clinic.form;

import cistern.clinic.web.Html;
import cistern.exchange.json.Json;
import cistern.measurement.Sample;
import cistern.report.markup.Element;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The result of one sample: number and unit as the laboratory printed them, such as {@code 20.4
 * mg/dL} or {@code <0.3 mg/L}. What belongs to a result beside them (imprecision, assay, time)
 * stays as it is.
 *
 * @param sample what was measured
 */
record ResultField(Sample sample) implements Typable {

  private static final String RESULTS = "results";
  private static final Pattern WRITTEN = Pattern.compile("([<>]?)\\s*(\\S+)(?:\\s+(\\S.*))?");

  @Override
  public Optional<String> section() {
    return Optional.empty();
  }

  @Override
  public String group() {
    return sample.analyte().family().name();
  }

  @Override
  public String key() {
    return sample.code();
  }

  @Override
  public String label() {
    String term = sample.term();
    return term.substring(0, 1).toUpperCase(Locale.ROOT) + term.substring(1);
  }

  @Override
  public String toTyped(Json.Structure file, ZoneId zone) {
    int index = index(file);
    return index < 0 ? "" : typed(results(file).get(index));
  }

  private static String typed(Json result) {
    String unit = text(result, "unit");
    for (Sign sign : Sign.values()) {
      String number = text(result, sign.field);
      if (!number.isEmpty()) {
        return (sign.sign + number + " " + unit).strip();
      }
    }
    return unit;
  }

  /** How a number is given. */
  private enum Sign {
    VALUE("value", ""),
    BELOW("below", "<"),
    ABOVE("above", ">");

    private final String field;
    private final String sign;

    Sign(String field, String sign) {
      this.field = field;
      this.sign = sign;
    }
  }

  private static String text(Json result, String name) {
    return new JsonPath(List.of(name))
        .find(result)
        .map(json -> FieldKind.NUMBER.toTyped(json, ZoneOffset.UTC))
        .orElse("");
  }

  @Override
  public Json.Structure with(Json.Structure file, String typed, ZoneId zone) {
    List<Json> results = new ArrayList<>(results(file));
    int index = index(file);
    Optional<Json> result =
        typed.isBlank()
            ? Optional.empty()
            : Optional.of(
                result(
                    typed.strip(), index < 0 ? Optional.empty() : Optional.of(results.get(index))));
    if (index >= 0 && result.isPresent()) {
      results.set(index, result.get());
    } else if (index >= 0) {
      results.remove(index);
    } else {
      result.ifPresent(results::add);
    }
    SequencedMap<String, Json> members = new LinkedHashMap<>(file.members());
    members.put(RESULTS, new Json.Sequence(results));
    return new Json.Structure(members);
  }

  private Json result(String typed, Optional<Json> before) {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("analyte", new Json.Text(sample.analyte().code()));
    members.put("in", new Json.Text(sample.in().code()));
    if (before.orElse(null) instanceof Json.Structure structure) {
      structure.members().forEach(members::putIfAbsent);
    }
    for (Sign sign : Sign.values()) {
      members.remove(sign.field);
    }
    members.remove("unit");
    Matcher written = WRITTEN.matcher(typed);
    if (written.matches()) {
      FieldKind.NUMBER
          .toJson(String.valueOf(written.group(2)), ZoneOffset.UTC)
          .ifPresent(number -> members.put(field(String.valueOf(written.group(1))), number));
      Optional.ofNullable(written.group(3))
          .ifPresent(unit -> members.put("unit", new Json.Text(unit.strip())));
    }
    return new Json.Structure(members);
  }

  private static String field(String sign) {
    return switch (sign) {
      case "<" -> Sign.BELOW.field;
      case ">" -> Sign.ABOVE.field;
      default -> Sign.VALUE.field;
    };
  }

  private int index(Json.Structure file) {
    List<Json> results = results(file);
    for (int i = 0; i < results.size(); i++) {
      if (text(results.get(i), "analyte").equals(sample.analyte().code())
          && text(results.get(i), "in").equals(sample.in().code())) {
        return i;
      }
    }
    return -1;
  }

  private static List<Json> results(Json.Structure file) {
    return file.members().get(RESULTS) instanceof Json.Sequence sequence
        ? sequence.items()
        : List.of();
  }

  /** Whether the place is inside the result at the index that it has in a file. */
  @Override
  public boolean isAt(String place) {
    return place.equals(key());
  }

  /** The place of the result in a file, as problems name it; empty when it is not there. */
  Optional<String> place(Json.Structure file) {
    int index = index(file);
    return index < 0 ? Optional.empty() : Optional.of(RESULTS + "[" + index + "]");
  }

  @Override
  public boolean isQuestion() {
    return false;
  }

  @Override
  public String toWords(String typed) {
    return label() + " " + typed;
  }

  @Override
  public Element toControl(String typed) {
    return Html.input(key(), typed).with("autocomplete", "off").with("spellcheck", "false");
  }
}
