package cistern.exchange.json;

import cistern.measurement.Answer;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The members of one JSON object, asked for by name and type. A member that is missing is empty; a
 * member of another type or range is empty and noted as a problem at its place. At the end {@link
 * #checkNoOthers} notes the members that nobody asked for.
 *
 * <pre>{@code
 * fields.checkGiven("name");
 * Optional<String> name = fields.text("name");
 * OptionalDouble dose = fields.number("doseMg", NumberRange.POSITIVE);
 * Answer pregnant = fields.answer("pregnancy");
 * fields.checkNoOthers();
 * }</pre>
 */
public final class Fields {

  private static final List<String> ANSWERS = Stream.of(Answer.values()).map(Answer::word).toList();

  private final Json.Structure structure;
  private final Place place;
  private final InputLimits limits;
  private final InputProblems problems;
  private final Set<String> known = new HashSet<>();

  private Fields(
      Json.Structure structure, Place place, InputLimits limits, InputProblems problems) {
    this.structure = structure;
    this.place = place;
    this.limits = limits;
    this.problems = problems;
  }

  /** The members of the object that is a whole document. */
  public static Fields of(Json.Structure document, InputLimits limits, InputProblems problems) {
    return new Fields(document, Place.WHOLE, limits, problems);
  }

  /** Where the object stands. */
  public Place place() {
    return place;
  }

  /** Where a member stands. */
  public Place place(String name) {
    return place.member(name);
  }

  /** The names of all members, in the order of the file. */
  public List<String> names() {
    return List.copyOf(structure.members().keySet());
  }

  /** Whether a member is there, of whatever type. */
  public boolean isGiven(String name) {
    return structure.members().containsKey(name);
  }

  /** Notes members that must be there and are not. */
  public void checkGiven(String... names) {
    for (String name : names) {
      if (!isGiven(name)) {
        add(name, InputTrouble.MISSING);
      }
    }
  }

  /** Notes a reason why the input is not valid, at a member. */
  public void add(String name, InputTrouble trouble, Object... arguments) {
    problems.add(place(name), trouble, arguments);
  }

  /** Everything noted so far, to note more. */
  public InputProblems problems() {
    return problems;
  }

  /** A member of any type, for one that may have several; the caller judges it. */
  public Optional<Json> value(String name) {
    known.add(name);
    return Optional.ofNullable(structure.members().get(name))
        .filter(value -> !(value instanceof Json.NotJson));
  }

  private <T extends Json> Optional<T> typed(String name, Class<T> type, String wanted) {
    Optional<Json> value = value(name);
    if (value.isPresent() && !type.isInstance(value.get())) {
      add(name, InputTrouble.WRONG_TYPE, wanted, value.get().kind());
    }
    return value.filter(type::isInstance).map(type::cast);
  }

  /** A text. */
  public Optional<String> text(String name) {
    return typed(name, Json.Text.class, "a text").map(Json.Text::value);
  }

  /** True or false. */
  public Optional<Boolean> truth(String name) {
    return typed(name, Json.Truth.class, "true or false").map(Json.Truth::value);
  }

  /** A word of a fixed list. */
  public <T> Optional<T> word(
      String name, Function<String, Optional<T>> parse, List<String> allowed) {
    Optional<String> text = text(name);
    Optional<T> word = text.flatMap(parse);
    if (text.isPresent() && word.isEmpty()) {
      add(name, InputTrouble.NOT_A_WORD, String.join(", ", allowed));
    }
    return word;
  }

  /** Yes, no or unknown; unknown when missing. */
  public Answer answer(String name) {
    return word(name, Answer::parse, ANSWERS).orElse(Answer.UNKNOWN);
  }

  /** A time, ISO 8601 with its offset. */
  public Optional<OffsetDateTime> time(String name) {
    Optional<String> text = text(name);
    Optional<OffsetDateTime> time = text.flatMap(IsoTime::parse);
    if (text.isPresent() && time.isEmpty()) {
      add(name, InputTrouble.NOT_A_TIME);
    }
    ValueBounds bounds = limits.bounds();
    Optional<OffsetDateTime> near = time.flatMap(bounds::within);
    if (time.isPresent() && near.isEmpty()) {
      add(name, InputTrouble.TOO_FAR_TIME, bounds.firstYear(), bounds.lastYear());
    }
    return near;
  }

  /** A number exactly as written; it is finite as a double, and zero as a double only when zero. */
  public Optional<BigDecimal> decimal(String name, NumberRange sign) {
    return typed(name, Json.Numeral.class, "a number")
        .flatMap(numeral -> Decimal.read(numeral, sign, limits, place(name), problems));
  }

  /** A number in its canonical unit, within the bounds of all numbers. */
  public OptionalDouble number(String name, NumberRange sign) {
    Optional<BigDecimal> decimal = decimal(name, sign);
    return decimal.isPresent()
        ? bounded(name, decimal.get().doubleValue(), "")
        : OptionalDouble.empty();
  }

  /**
   * A number of a member after its conversion; empty, with a problem noted, when it lies beyond the
   * bounds of all numbers.
   *
   * @param unit the canonical unit; empty for a number without one
   */
  public OptionalDouble bounded(String name, double number, String unit) {
    return isBounded(place(name), number, unit)
        ? OptionalDouble.of(number)
        : OptionalDouble.empty();
  }

  private boolean isBounded(Place at, double number, String unit) {
    ValueBounds bounds = limits.bounds();
    Optional<InputTrouble> trouble = bounds.trouble(number);
    trouble.ifPresent(t -> problems.add(at, t, bounds.mostText(), (" " + unit).stripTrailing()));
    return trouble.isEmpty();
  }

  /** A whole number, zero or more. */
  public OptionalInt count(String name) {
    return count(name, (int) limits.bounds().most());
  }

  /** A whole number from zero to the most that it can be. */
  public OptionalInt count(String name, int most) {
    Optional<BigDecimal> decimal = decimal(name, NumberRange.NOT_NEGATIVE);
    Optional<Integer> count = decimal.flatMap(Decimal::whole).filter(number -> number <= most);
    if (decimal.isPresent() && count.isEmpty()) {
      add(name, InputTrouble.NOT_WHOLE, most);
    }
    return count.isPresent() ? OptionalInt.of(count.get()) : OptionalInt.empty();
  }

  /** The members of an object. */
  public Optional<Fields> object(String name) {
    return typed(name, Json.Structure.class, "an object { }")
        .map(structure -> new Fields(structure, place(name), limits, problems));
  }

  /** The members of each object of a list; items of another type are noted and left out. */
  public List<Fields> objects(String name) {
    return items(name, Json.Structure.class, "an object { }").stream()
        .map(item -> new Fields(item.value(), item.place(), limits, problems))
        .toList();
  }

  /** The texts of a list. */
  public List<String> texts(String name) {
    return items(name, Json.Text.class, "a text").stream().map(i -> i.value().value()).toList();
  }

  /** The numbers of a list, within the bounds of all numbers; a chance may be as small as it is. */
  public List<Double> numbers(String name, NumberRange sign) {
    List<Double> numbers = new ArrayList<>();
    for (Item<Json.Numeral> item : items(name, Json.Numeral.class, "a number")) {
      Decimal.read(item.value(), sign, limits, item.place(), problems)
          .map(BigDecimal::doubleValue)
          .filter(number -> sign == NumberRange.FRACTION || isBounded(item.place(), number, ""))
          .ifPresent(numbers::add);
    }
    return numbers;
  }

  /** An item of a list of one type. */
  private record Item<T>(T value, Place place) {}

  private <T extends Json> List<Item<T>> items(String name, Class<T> type, String wanted) {
    List<Item<T>> items = new ArrayList<>();
    List<Json> all =
        typed(name, Json.Sequence.class, "a list [ ]").map(Json.Sequence::items).orElse(List.of());
    for (int i = 0; i < all.size(); i++) {
      Place at = place(name).item(i);
      if (type.isInstance(all.get(i))) {
        items.add(new Item<>(type.cast(all.get(i)), at));
      } else if (!(all.get(i) instanceof Json.NotJson)) {
        problems.add(at, InputTrouble.WRONG_TYPE, wanted, all.get(i).kind());
      }
    }
    return items;
  }

  /** Marks members as known without reading them: they are kept for a round trip. */
  public void keep(String... names) {
    known.addAll(List.of(names));
  }

  /** Notes every member that nobody asked for as an unknown field, which is kept. */
  public void checkNoOthers() {
    for (String name : structure.members().keySet()) {
      if (!known.contains(name)) {
        problems.add(new UnknownField(place(name).path()));
      }
    }
  }
}
